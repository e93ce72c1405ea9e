using StabilityStudy.Statistics;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>The kinds of row in a table of estimates.</summary>
internal static class EstimateRow
{
    public const string Describes = "describes";
    public const string ShownOnly = "shown only";

    /// <summary>A figure that a criterion rests on.</summary>
    public static Row Deciding(string name, string value, string interval, string criterion) =>
        new([
            new TableCell(name, Emphasis.Strong),
            new TableCell(value, Emphasis.Strong),
            new TableCell(interval, Emphasis.Strong),
            new TableCell(Criterion(criterion), Emphasis.Strong),
        ]);

    /// <summary>A figure that does not decide.</summary>
    public static Row Other(string name, string value, string interval, string feeds) =>
        new([
            new TableCell(name),
            new TableCell(value),
            new TableCell(interval),
            new TableCell(feeds, Emphasis.Muted),
        ]);

    /// <summary>A method that gives no figure for these data, and why.</summary>
    public static Row Refused<T>(string name, Estimate<T> estimate, string feeds)
        where T : class => Other(name, "not computable", RefusalWords.Sentence(estimate), feeds);

    /// <summary>A figure without an interval and why it has none, or a method that gives no figure either.</summary>
    public static Row WithoutInterval<T>(
        string name,
        Estimate<T> estimate,
        Func<PointEstimate, string> value,
        string feeds
    )
        where T : class =>
        estimate.NotComputable?.Point is { } point
            ? Other(
                name,
                value(point),
                $"no interval: {RefusalWords.Clause(estimate.NotComputable)}",
                feeds
            )
            : Refused(name, estimate, feeds);

    /// <summary>The criterion that a figure feeds.</summary>
    public static string Criterion(string id) => "criterion " + id;
}
