namespace ExampleStudies.Generator.Sheet;

/// <summary>The example of one sheet with a row a pair: PT in whole blood after 12 h. All numbers are invented but the drift.</summary>
internal static class PairedSheet
{
    private const string Study = "sheet";
    private const int Days = 7;
    private const int PerDay = 3;
    private const int Hours = 12;

    /// <summary>The delayed tube of this specimen was not drawn.</summary>
    private const string NotDrawn = "P-008";

    /// <summary>Rise of the PT in percent a day: pooled, Gomez Rioja and others, Clin Chem Lab Med 2025.</summary>
    private const double PercentPerDay = 2.9;

    private static readonly DateTimeOffset FirstDay = new(2026, 5, 4, 0, 0, 0, TimeSpan.Zero);
    private static readonly ImmutableArray<int> DaysAfterFirst = [0, 1, 2, 3, 4, 7, 8];
    private static readonly Assay Assay = new("PT", "s", 1, 1.2, 0.8, "", "", 0);

    private static readonly ImmutableArray<string> Header =
    [
        "specimen",
        "collected_at",
        "baseline_tested_at",
        "baseline_result",
        "spun_at",
        "delayed_tested_at",
        "delayed_result",
        "clot",
        "hemolysis",
    ];

    /// <summary>The content of pairs.csv: a row a specimen, local times as a laboratory writes them.</summary>
    public static string ToCsv() =>
        CsvFile.Write(
            Header,
            Enumerable.Range(1, Days * PerDay).Select(number => Row(number, (number - 1) / PerDay))
        );

    private static ImmutableArray<string> Row(int number, int day)
    {
        var specimen = string.Create(CultureInfo.InvariantCulture, $"P-{number:000}");
        var random = SeededRandom.For($"{Study} {specimen}");
        var collectedAt = FirstDay
            .AddDays(DaysAfterFirst[day])
            .AddHours(8)
            .AddMinutes((20 * ((number - 1) % PerDay)) + random.Whole(0, 12));
        var baselineAt = collectedAt.AddMinutes(random.Whole(38, 58));
        var delayedAt = collectedAt.AddHours(Hours).AddMinutes(random.Whole(3, 22));
        var truth = 12.4 * Math.Exp(0.09 * random.Normal());
        var rise = (PercentPerDay + random.Normal()) * Hours / 24;
        return
        [
            specimen,
            Local(collectedAt),
            Local(baselineAt),
            Report(truth, "BL", specimen, day),
            Delayed(Local(delayedAt.AddMinutes(-random.Whole(20, 35)))),
            Delayed(Local(delayedAt)),
            Delayed(Report(truth * (1 + (rise / 100)), "12H", specimen, day)),
            "no",
            "none",
        ];

        string Delayed(string written) => specimen == NotDrawn ? "" : written;
    }

    private static string Report(double truth, string moment, string specimen, int day) =>
        Assay.Report(
            Assay.Measure(
                truth,
                Study,
                string.Create(CultureInfo.InvariantCulture, $"{day}-{moment}"),
                $"{specimen}-{moment}"
            )
        );

    private static string Local(DateTimeOffset time) =>
        time.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
}
