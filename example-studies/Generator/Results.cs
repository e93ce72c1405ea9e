namespace ExampleStudies.Generator;

/// <summary>Tests the tubes and writes results.csv.</summary>
internal static class Results
{
    internal static readonly ImmutableArray<string> Header =
    [
        "specimen",
        "tube",
        "analyte",
        "time_point",
        "replicate",
        "tested_at",
        "result",
        "unit",
        "run",
        "instrument",
        "lot",
        "calibration",
        "operator",
        "flag",
        "remark",
    ];

    /// <summary>The content of results.csv: a row a result. A clotting time needs no calibration, so that column is empty.</summary>
    public static string ToCsv(ImmutableArray<Tube> tubes)
    {
        var byCode = tubes.ToImmutableDictionary(tube => tube.Code, StringComparer.Ordinal);
        return CsvFile.Write(Header, tubes.Select(tube => Row(tube, byCode)));
    }

    private static ImmutableArray<string> Row(Tube tube, ImmutableDictionary<string, Tube> byCode)
    {
        return
        [
            tube.Patient.Specimen,
            tube.Code,
            "aPTT",
            tube.Plan.TimePoint,
            "1",
            CsvFile.Time(tube.TestedAt),
            tube.Clotted ? "" : Measure(tube, byCode).ToString("0.0", CultureInfo.InvariantCulture),
            "s",
            RunOf(tube),
            "AN1",
            "R-2601",
            "",
            tube.Plan.Operator,
            tube.Clotted ? "clot" : "",
            Imperfections.RemarkOn(tube),
        ];
    }

    /// <summary>The reported aPTT in seconds: truth × what went wrong × error of the run × error of this result, to 0.1 s.</summary>
    private static decimal Measure(Tube tube, ImmutableDictionary<string, Tube> byCode)
    {
        var sampled = byCode[Imperfections.TubeSampledFor(tube)];
        var runPercent = RunErrorPercent(RunOf(tube));
        var ownPercent =
            Scenario.WithinRunPercent * SeededRandom.For("result " + tube.Code).Normal();
        var seconds =
            sampled.Patient.SecondsAfter(sampled.HoursToTest)
            * Imperfections.FactorOf(tube)
            * (1 + (runPercent / 100))
            * (1 + (ownPercent / 100));
        return Math.Round((decimal)seconds, 1, MidpointRounding.AwayFromZero);
    }

    /// <summary>The controls of every run: two levels with a range of three between-run SD, and a bridging plasma.</summary>
    public static string ControlsToCsv(ImmutableArray<Tube> tubes) =>
        ControlResults.ToCsv(
            "aptt",
            tubes
                .GroupBy(RunOf, StringComparer.Ordinal)
                .Select(run => new ControlRun(
                    run.Key,
                    run.Min(tube => tube.TestedAt).AddMinutes(-5),
                    _ => RunErrorPercent(run.Key)
                )),
            _ => Scenario.Controls,
            (_, _) => 1
        );

    private static double RunErrorPercent(string run) =>
        Scenario.RunPercent * SeededRandom.For("run " + run).Normal();

    private static string RunOf(Tube tube) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{tube.Patient.CollectedAt:yyyy-MM-dd}-{tube.Plan.RunSuffix}"
        );
}
