namespace ExampleStudies.Generator;

/// <summary>A stable plasma that is tested with the patients' tubes.</summary>
/// <param name="Code">Code of the material and level.</param>
/// <param name="Analyte">What is tested in it.</param>
/// <param name="Unit">Unit of the result.</param>
/// <param name="Target">True value.</param>
/// <param name="AllowedPercent">Half width of the allowed range, percent of the target; 0 for a bridging plasma, which has none.</param>
/// <param name="Decimals">Decimals of a result.</param>
/// <param name="WithinRunPercent">Imprecision within a run, percent.</param>
internal sealed record ControlMaterial(
    string Code,
    string Analyte,
    string Unit,
    decimal Target,
    decimal AllowedPercent,
    int Decimals,
    double WithinRunPercent
);

/// <summary>A run in which controls are tested.</summary>
/// <param name="Code">Code of the run, as in the results.</param>
/// <param name="StartsAt">Time of the first control.</param>
/// <param name="ErrorPercent">Error that all results of one analyte share in this run, percent, by analyte.</param>
internal sealed record ControlRun(
    string Code,
    DateTimeOffset StartsAt,
    Func<string, double> ErrorPercent
);

/// <summary>Tests the controls of each run and writes controls.csv.</summary>
internal static class ControlResults
{
    /// <summary>Results of a bridging plasma in each run: with one alone its own error would widen every corrected change.</summary>
    private const int PerBridgingRun = 2;

    private const int MinutesBetween = 4;

    private static readonly ImmutableArray<string> Header =
    [
        "control",
        "analyte",
        "run",
        "tested_at",
        "result",
        "unit",
        "target",
        "allowed_low",
        "allowed_high",
        "kind",
    ];

    /// <summary>The content of controls.csv: a row a control result.</summary>
    /// <param name="study">Name of the study, which names the random streams.</param>
    /// <param name="runs">The runs in order.</param>
    /// <param name="materialsOf">What is tested in a run.</param>
    /// <param name="mishap">Factor by which something that went wrong changes a result; 1 for nothing.</param>
    public static string ToCsv(
        string study,
        IEnumerable<ControlRun> runs,
        Func<ControlRun, IEnumerable<ControlMaterial>> materialsOf,
        Func<ControlRun, ControlMaterial, double> mishap
    ) =>
        CsvFile.Write(
            Header,
            from run in runs
            from material in materialsOf(run)
            from test in Enumerable.Range(1, material.AllowedPercent > 0 ? 1 : PerBridgingRun)
            select Row(study, run, material, test, mishap(run, material))
        );

    private static ImmutableArray<string> Row(
        string study,
        ControlRun run,
        ControlMaterial material,
        int test,
        double mishap
    )
    {
        var random = SeededRandom.For(
            $"control {study} {material.Code} {material.Analyte} {run.Code}"
                + (test == 1 ? "" : $" {test}")
        );
        var value =
            (double)material.Target
            * mishap
            * (1 + (run.ErrorPercent(material.Analyte) / 100))
            * (1 + (material.WithinRunPercent * random.Normal() / 100));
        var isControl = material.AllowedPercent > 0;
        var half = material.Target * material.AllowedPercent / 100;
        return
        [
            material.Code,
            material.Analyte,
            run.Code,
            CsvFile.Time(
                run.StartsAt.AddMinutes(random.Whole(0, 2) + (MinutesBetween * (test - 1)))
            ),
            Number((decimal)value),
            material.Unit,
            isControl ? Number(material.Target) : "",
            isControl ? Number(material.Target - half) : "",
            isControl ? Number(material.Target + half) : "",
            isControl ? "control" : "bridging plasma",
        ];

        string Number(decimal number) =>
            Math.Round(number, material.Decimals, MidpointRounding.AwayFromZero)
                .ToString("F" + material.Decimals, CultureInfo.InvariantCulture);
    }
}
