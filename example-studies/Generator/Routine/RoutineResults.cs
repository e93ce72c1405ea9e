namespace ExampleStudies.Generator.Routine;

/// <summary>Tests the tubes; writes results.csv and controls.csv.</summary>
internal static class RoutineResults
{
    /// <summary>The content of results.csv: a row for each analyte of each tube.</summary>
    public static string ToCsv(ImmutableArray<RoutineTube> tubes) =>
        CsvFile.Write(
            Results.Header,
            tubes.SelectMany(tube => tube.Plan.Analytes.Select(analyte => Row(tube, analyte)))
        );

    /// <summary>The content of controls.csv: each analyte of a run with two levels and a bridging plasma.</summary>
    public static string ControlsToCsv(ImmutableArray<RoutineTube> tubes)
    {
        var analytes = tubes
            .GroupBy(tube => tube.Run, StringComparer.Ordinal)
            .ToDictionary(
                run => run.Key,
                run => run.SelectMany(tube => tube.Plan.Analytes).ToHashSet(StringComparer.Ordinal),
                StringComparer.Ordinal
            );
        return ControlResults.ToCsv(
            RoutineScenario.Study,
            tubes
                .GroupBy(tube => tube.Run, StringComparer.Ordinal)
                .Select(run => new ControlRun(
                    run.Key,
                    run.Min(tube => tube.TestedAt).AddMinutes(-5),
                    analyte => Assay(analyte).RunErrorPercent(RoutineScenario.Study, run.Key)
                )),
            run =>
                RoutineScenario.Controls.Where(material =>
                    analytes[run.Code].Contains(material.Analyte)
                ),
            RoutineImperfections.FactorOf
        );
    }

    private static ImmutableArray<string> Row(RoutineTube tube, string analyte)
    {
        var assay = Assay(analyte);
        return
        [
            tube.Person.Clotting.Specimen,
            tube.Code,
            analyte,
            tube.Plan.TimePoint,
            "1",
            CsvFile.Time(tube.TestedAt),
            tube.Clotted ? "" : assay.Report(Measure(tube, analyte)),
            assay.Unit,
            tube.Run,
            "AN1",
            assay.Lot,
            assay.Calibration,
            tube.Plan.Operator,
            tube.Clotted ? "clot" : "",
            RoutineImperfections.RemarkOn(tube),
        ];
    }

    /// <summary>The INR is computed from the PT as reported, as analyzers do.</summary>
    private static double Measure(RoutineTube tube, string analyte)
    {
        if (analyte == "INR")
        {
            var reported = Math.Round(Measure(tube, "PT"), 1, MidpointRounding.AwayFromZero);
            return Math.Pow(reported / RoutineScenario.MeanNormalSeconds, RoutineScenario.Isi);
        }

        return Assay(analyte)
            .Measure(
                tube.Person.ValueAfter(analyte, tube.HoursToTest)
                    * RoutineImperfections.FactorOf(tube),
                RoutineScenario.Study,
                tube.Run,
                tube.Code
            );
    }

    private static Assay Assay(string analyte) =>
        RoutineScenario.Assays.Single(assay => assay.Analyte == analyte);
}
