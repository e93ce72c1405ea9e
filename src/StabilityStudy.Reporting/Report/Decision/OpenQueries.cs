using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What the files leave open for the study as a whole, counted for page 1.</summary>
internal static class OpenQueries
{
    /// <summary>What decides whether a specimen may be used, where it is not recorded of every one.</summary>
    private static readonly ImmutableDictionary<QueryKind, string> s_eligibility =
        ImmutableDictionary.CreateRange<QueryKind, string>([
            new(RecordQueries.ClotNotRecorded, "clot"),
            new(RecordQueries.FillNotRecorded, "fill"),
            new(RecordQueries.HematocritNotRecorded, "hematocrit"),
        ]);

    /// <summary>What the record of the study says against itself, and the gravest other query that belongs to no row, in full.</summary>
    public static IEnumerable<string> Gravest(StudyAnalysis analysis)
    {
        var grave = analysis
            .Queries.Where(query =>
                query is { Severity: Severity.Attention, Scope: null }
                && query.Rank is >= QueryRank.Record and <= QueryRank.Confounding
                && !Reservations.IsInRows(analysis, query)
            )
            .OrderBy(query => query.Rank)
            .ToImmutableArray();
        return grave
            .Where((query, i) => i == 0 || query.Rank == QueryRank.Record)
            .Select(query => query.Message);
    }

    /// <summary>Whether a query needs an answer and stands neither beside a row of page 1 nor among its figures.</summary>
    public static bool IsOpen(StudyAnalysis analysis, DataQuery query) =>
        query.Severity == Severity.Attention
        && query.Rank
            is not (
                QueryRank.StatedAnyway
                or QueryRank.EarlyChange
                or QueryRank.Confounding
                or QueryRank.ShorterThanToday
                or QueryRank.CountedOutside
            )
        && !Reservations.IsInRows(analysis, query);

    /// <summary>"2 sources from memory or examples; clot not always recorded; 5 further queries: page 6."; null where there is nothing.</summary>
    public static string? InBrief(StudyAnalysis analysis, SectionPages pages)
    {
        var sources = NamedSource.All(analysis.Protocol).Count(source => source.IsNoDocument);
        var open = analysis
            .Queries.Where(query => IsOpen(analysis, query) && query.Rank != QueryRank.Source)
            .ToImmutableArray();
        string[] unknown =
        [
            .. open.Select(query => s_eligibility.GetValueOrDefault(query.Kind))
                .OfType<string>()
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
        var others = open.Count(query => !s_eligibility.ContainsKey(query.Kind));
        string[] parts =
        [
            .. sources == 0
                ? []
                : new[] { $"{Counted.Of(sources, "source")} from memory or examples" },
            .. unknown.Length == 0
                ? []
                : new[] { $"{string.Join(", ", unknown)} not always recorded" },
            .. others == 0
                ? []
                : new[]
                {
                    $"{NumberText.Count(others)} open {(others == 1 ? "query" : "queries")}",
                },
        ];
        return parts.Length == 0
            ? null
            : $"{TradeWords.Capital(string.Join("; ", parts))}: {(pages.PageOf(QuerySection.Title) is { } page ? $"page {NumberText.Count(page)}" : pages.Of(QuerySection.Title))}.";
    }
}
