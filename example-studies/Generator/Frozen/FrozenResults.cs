namespace ExampleStudies.Generator.Frozen;

/// <summary>Tests the portions; writes results.csv and controls.csv.</summary>
internal static class FrozenResults
{
    /// <summary>The content of results.csv: a row for each analyte of each portion.</summary>
    public static string ToCsv(ImmutableArray<FrozenTube> tubes) =>
        CsvFile.Write(
            Results.Header,
            tubes.SelectMany(tube => FrozenScenario.Assays.Select(assay => Row(tube, assay)))
        );

    /// <summary>The content of controls.csv: both analytes of each run with two levels and a bridging plasma.</summary>
    public static string ControlsToCsv(ImmutableArray<FrozenTube> tubes) =>
        ControlResults.ToCsv(
            FrozenScenario.Study,
            tubes
                .GroupBy(tube => tube.Run, StringComparer.Ordinal)
                .Select(run => new ControlRun(
                    run.Key,
                    run.Min(tube => tube.TestedAt).AddMinutes(-5),
                    analyte =>
                        FrozenScenario
                            .Assays.Single(assay => assay.Analyte == analyte)
                            .RunErrorPercent(FrozenScenario.Study, run.Key)
                )),
            _ => FrozenScenario.Controls,
            (_, _) => 1
        );

    private static ImmutableArray<string> Row(FrozenTube tube, Assay assay) =>
        [
            tube.Specimen,
            tube.Code,
            assay.Analyte,
            tube.Portion.TimePoint,
            "1",
            CsvFile.Time(tube.TestedAt),
            tube.Lost
                ? "QNS"
                : assay.Report(
                    assay.Measure(
                        assay.Analyte == "aPTT" ? tube.ApttSeconds : tube.FactorVIII,
                        FrozenScenario.Study,
                        tube.Run,
                        tube.Code
                    )
                ),
            assay.Unit,
            tube.Run,
            "AN1",
            assay.Lot,
            assay.Calibration,
            "LS1",
            "",
            tube.Lost ? "vial cracked in the freezer" : "",
        ];
}
