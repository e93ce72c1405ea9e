using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Certainty;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>
/// What could change the decision, as short as page 1 needs it. How well the protocol came first, what the conclusions
/// rest on and how many were left out always stand there; then the gravest kinds of attention; the others are counted.
/// </summary>
internal static class AttentionSummary
{
    /// <summary>Where page 1 has the room.</summary>
    private const int MostKinds = 1;

    private const int MostPieces = 3;

    /// <summary>What decides whether a specimen may be used, where it is not recorded of every one.</summary>
    private static readonly ImmutableDictionary<QueryKind, string> s_eligibility =
        ImmutableDictionary.CreateRange<QueryKind, string>([
            new(RecordQueries.ClotNotRecorded, "clot"),
            new(RecordQueries.FillNotRecorded, "fill"),
            new(RecordQueries.HematocritNotRecorded, "hematocrit"),
        ]);

    public static Attentions Of(StudyAnalysis analysis, SectionPages pages)
    {
        var kinds = Kinds(analysis);
        var shown = FirstPage.IsInFull(analysis) ? MostKinds : 0;
        return new([
            new AttentionLine("Protocol", LockWords.Of(analysis.Lock), ""),
            .. LookWords.Of(analysis.Looks) is { } looks
                ? [new AttentionLine("Looks", looks, "")]
                : ImmutableArray<AttentionLine>.Empty,
            .. kinds.Take(shown).Select(kind => OfKind(analysis, kind)),
            .. Line("Drift", Earlier(analysis, pages)),
            .. Line("Care", SideChangeWords.OnFirstPage(analysis, pages)),
            .. FirstPage.IsInFull(analysis)
                ? ImmutableArray<AttentionLine>.Empty
                : [.. Line("Not tested", NotTested(analysis, pages))],
            .. Line("Group unknown", Unknown(analysis, pages)),
            .. Line("Rests on", SensitivityToOneSpecimen.Supported(analysis)),
            .. Line("Still open", SensitivityToOneSpecimen.FirstOpen(analysis)),
            .. Line("Left out", LeftOutNumbers(analysis)),
            .. More(analysis, [.. kinds.Skip(shown)], pages),
        ]);
    }

    private static IEnumerable<AttentionLine> Line(string label, IEnumerable<string> sentences)
    {
        var text = string.Join(" ", sentences);
        return text.Length == 0 ? [] : [new AttentionLine(label, text, "")];
    }

    private static IEnumerable<string> NotTested(StudyAnalysis analysis, SectionPages pages)
    {
        string[] places =
        [
            .. from sequence in analysis.Sequences
            where sequence.Window is not null
            let names = SequenceNames.Of(analysis, sequence)
            let levels = SideChangeWords.NotTested(sequence, names)
            where levels is not null
            select $"{names.Code(analysis)} {levels}",
        ];
        return places.Length == 0
            ? []
            :
            [
                $"Decision levels with fewer than {NumberText.Count(LevelCoverage.FewestOnEitherSide)} baselines on a side: {Few(places, analysis, pages.Of(CoverageSection.Title))}",
            ];
    }

    private static IEnumerable<string> Earlier(StudyAnalysis analysis, SectionPages pages) =>
        DriftRemarks.EarlierInBrief(analysis) is { IsEmpty: false } remarks
            ? [Few(remarks, analysis, pages.Of(DriftSection.Title))]
            : [];

    private static IEnumerable<string> Unknown(StudyAnalysis analysis, SectionPages pages) =>
        UnknownGroup.Windows(analysis) is { IsEmpty: false } windows
            ? [Few(windows, analysis, pages.Of(DecisionSection.Title))]
            : [];

    /// <summary>The first of many pieces, and where the others are.</summary>
    private static string Few(
        IReadOnlyCollection<string> pieces,
        StudyAnalysis analysis,
        string others
    )
    {
        var most = FirstPage.IsLong(analysis) ? 1 : MostPieces;
        return string.Join("; ", pieces.Take(most))
            + (
                pieces.Count > most
                    ? $"; {NumberText.Count(pieces.Count - most)} more in {others}."
                    : "."
            );
    }

    private static IEnumerable<string> LeftOutNumbers(StudyAnalysis analysis) =>
        from sequence in analysis.Sequences
        let numbers = sequence
            .Cells.Select(LeftOut.InWords)
            .Where(text => text.Length > 0)
            .ToImmutableArray()
        where !numbers.IsEmpty
        select $"{SequenceNames.Of(analysis, sequence).Code(analysis)} at {string.Join("; ", numbers)}.";

    private static ImmutableArray<IGrouping<QueryKind, DataQuery>> Kinds(StudyAnalysis analysis) =>
        [
            .. analysis
                .Queries.Where(query =>
                    query.Severity == Severity.Attention
                    && query.Rank is not (QueryRank.StatedAnyway or QueryRank.Source)
                )
                .GroupBy(query => query.Kind)
                .OrderBy(kind => kind.Key.Rank),
        ];

    private static AttentionLine OfKind(
        StudyAnalysis analysis,
        IGrouping<QueryKind, DataQuery> kind
    )
    {
        if (kind.Key == SequenceQueries.ChangeBeforeBaseline)
        {
            return Line(
                "Baseline",
                string.Join(" ", kind.Select(query => AttentionNames.Message(analysis, query)))
            );
        }

        if (kind.Key == PairQueries.DelayedTubeFailed)
        {
            return Line(
                "Failed",
                $"Delayed tube failed, counted as outside: {AttentionNames.Of(analysis, pair => pair.Status == Core.Pairing.PairStatus.Failed)}."
            );
        }

        if (kind.Key == PairQueries.DelayedResultMissing)
        {
            return Line(
                "Missing",
                $"No delayed result, counted as outside: {AttentionNames.Of(analysis, pair => pair.Status == Core.Pairing.PairStatus.NoDelayedResult)}."
            );
        }

        if (kind.Key == PairQueries.OutlierFlagged)
        {
            return Line(
                "Outlier",
                $"Flagged, kept in every figure: {AttentionNames.Of(analysis, pair => pair.IsOutlier)}."
            );
        }

        var more =
            kind.Count() > 1
                ? $" (and {NumberText.Count(kind.Count() - 1)} more of this kind)"
                : "";
        return Line("Attention", AttentionNames.Message(analysis, kind.First()) + more);

        static AttentionLine Line(string label, string text) => new(label, text, "");
    }

    /// <summary>How many more attentions there are, and of these the sources: every verdict stands on the limits.</summary>
    private static IEnumerable<AttentionLine> More(
        StudyAnalysis analysis,
        ImmutableArray<IGrouping<QueryKind, DataQuery>> kinds,
        SectionPages pages
    )
    {
        var sources = NamedSource.All(analysis.Protocol).Count(source => source.IsNoDocument);
        string[] unknown =
        [
            .. kinds
                .Select(kind => s_eligibility.GetValueOrDefault(kind.Key))
                .OfType<string>()
                .Order(StringComparer.Ordinal),
        ];
        var others = kinds
            .Where(kind => !s_eligibility.ContainsKey(kind.Key))
            .Sum(kind => kind.Count());
        string[] parts =
        [
            .. sources == 0
                ? []
                : new[] { $"{Counted.Of(sources, "source")} from memory or examples" },
            .. unknown.Length == 0
                ? []
                : new[] { $"{string.Join(", ", unknown)} not always recorded" },
            .. others == 0 ? [] : new[] { $"{NumberText.Count(others)} further" },
        ];
        if (parts.Length > 0)
        {
            yield return new AttentionLine(
                "More",
                $"{string.Join("; ", parts)}: {pages.Of(QuerySection.Title)}.",
                ""
            );
        }
    }
}
