using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>
/// What could change the decision, as short as page 1 needs it. How well the protocol came first, what the conclusions
/// rest on and how many were left out always stand there; then the gravest kinds of attention; the others are counted.
/// </summary>
internal static class AttentionSummary
{
    private const int MostKinds = 2;

    internal static ImmutableHashSet<string> SaidElsewhere { get; } =
    [
        "modified-test",
        "left-out-pairs-could-overturn",
        "pair-excluded",
        "outside-timing",
        "baseline-invalid",
        "no-delayed-result",
        "specimen-ineligible",
        "beyond-measuring-interval",
    ];

    public static Attentions Of(StudyAnalysis analysis)
    {
        var kinds = Kinds(analysis);
        return new([
            new AttentionLine(
                "Protocol",
                TradeWords.Capital(TradeWords.Of(analysis.Lock)) + ".",
                ""
            ),
            .. PerSequence(analysis, "Rests on", RestsOn),
            .. PerSequence(analysis, "Open", WouldChange),
            .. PerSequence(analysis, "Left out", LeftOutNumbers),
            .. kinds.Take(MostKinds).Select(kind => OfKind(analysis, kind)),
            .. More([.. kinds.Skip(MostKinds)]),
        ]);
    }

    private static IEnumerable<AttentionLine> PerSequence(
        StudyAnalysis analysis,
        string label,
        Func<Sequence, string> text
    ) =>
        from sequence in analysis.Sequences
        let found = text(sequence)
        where found.Length > 0
        select new AttentionLine(
            label,
            $"{SequenceNames.Of(analysis, sequence).Title(analysis)} {found}.",
            ""
        );

    /// <summary>
    /// What would take away the support of a supported time point. Earlier ones are named too: the window ends at the first
    /// time point that is not supported, so the weakest of them carries all.
    /// </summary>
    private static string RestsOn(Sequence sequence) =>
        WouldBe(sequence.Cells.Where(cell => cell.Conclusion == Conclusion.Supported));

    /// <summary>What would change the conclusion at the first time point that is not supported.</summary>
    private static string WouldChange(Sequence sequence) =>
        WouldBe(sequence.Cells.SkipWhile(cell => cell.Conclusion == Conclusion.Supported).Take(1));

    private static string WouldBe(IEnumerable<Cell> cells)
    {
        var changes =
            from cell in cells
            from line in cell.Robustness
            where line.Changes
            select $"{TradeWords.Of(line.Conclusion)} at {cell.Key.TimePoint} {line.Question}";
        return changes.Any() ? "would be " + string.Join("; ", changes) : "";
    }

    private static string LeftOutNumbers(Sequence sequence)
    {
        var numbers = sequence.Cells.Select(LeftOut.InWords).Where(text => text.Length > 0);
        return numbers.Any() ? "at " + string.Join("; ", numbers) : "";
    }

    private static ImmutableArray<IGrouping<string, DataQuery>> Kinds(StudyAnalysis analysis) =>
        [
            .. analysis
                .Queries.Where(query =>
                    query.Severity == Severity.Attention && !SaidElsewhere.Contains(query.Code)
                )
                .GroupBy(query => query.Code)
                .OrderBy(kind => AttentionRanking.Of(kind.Key)),
        ];

    private static AttentionLine OfKind(
        StudyAnalysis analysis,
        IGrouping<string, DataQuery> kind
    ) =>
        kind.Key switch
        {
            "delayed-tube-failed" => new AttentionLine(
                "Failed",
                $"Delayed tube failed, counted as outside: {AttentionNames.Of(analysis, pair => pair.Status == Core.Pairing.PairStatus.Failed)}.",
                ""
            ),
            "delayed-result-missing" => new AttentionLine(
                "Missing",
                $"No delayed result and no reason, counted as outside: {AttentionNames.Of(analysis, pair => pair.IsUnexplained)}.",
                ""
            ),
            "outlier-flagged" => new AttentionLine(
                "Outlier",
                $"Flagged, kept in every figure: {AttentionNames.Of(analysis, pair => pair.IsOutlier)}.",
                ""
            ),
            _ => new AttentionLine(
                "Attention",
                kind.First().Message
                    + (
                        kind.Count() > 1
                            ? $" (and {NumberText.Count(kind.Count() - 1)} more of this kind)"
                            : ""
                    ),
                ""
            ),
        };

    private static IEnumerable<AttentionLine> More(
        ImmutableArray<IGrouping<string, DataQuery>> kinds
    )
    {
        if (kinds.IsEmpty)
        {
            yield break;
        }

        var byCode = kinds.Select(kind =>
            (kind.Count() == 1 ? "" : NumberText.Count(kind.Count()) + " × ")
            + kind.Key.Replace('-', ' ')
        );
        yield return new AttentionLine(
            "More",
            $"{NumberText.Count(kinds.Sum(kind => kind.Count()))} in \"Data queries\": {string.Join(", ", byCode)}.",
            ""
        );
    }
}
