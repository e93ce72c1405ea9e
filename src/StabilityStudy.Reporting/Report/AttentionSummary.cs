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
        "protocol-changed-after-lock",
        "locked-after-first-collection",
        "left-out-pairs-could-overturn",
        "pair-excluded",
        "outside-timing",
        "baseline-invalid",
        "no-delayed-result",
        "specimen-ineligible",
        "beyond-measuring-interval",
    ];

    public static Attentions Of(StudyAnalysis analysis, SectionPages pages)
    {
        var kinds = Kinds(analysis);
        return new([
            new AttentionLine("Protocol", LockWords.Of(analysis.Lock), ""),
            .. Line("Rests on", WouldBe(analysis, Supported)),
            .. Line("Still open", WouldBe(analysis, FirstOpen)),
            .. Line("Left out", LeftOutNumbers(analysis)),
            .. kinds.Take(MostKinds).Select(kind => OfKind(analysis, kind)),
            .. More([.. kinds.Skip(MostKinds)], pages),
        ]);
    }

    private static IEnumerable<AttentionLine> Line(string label, IEnumerable<string> sentences)
    {
        var text = string.Join(" ", sentences);
        return text.Length == 0 ? [] : [new AttentionLine(label, text, "")];
    }

    /// <summary>
    /// What would take away the support of a supported time point is asked of all of them: the window ends at the first
    /// time point that is not supported, so the weakest of them carries all.
    /// </summary>
    private static IEnumerable<Cell> Supported(Sequence sequence) =>
        sequence.Cells.Where(cell => cell.Conclusion == Conclusion.Supported);

    /// <summary>What would change the conclusion is asked of the first time point that is not supported.</summary>
    private static IEnumerable<Cell> FirstOpen(Sequence sequence) =>
        sequence
            .Cells.SkipWhile(cell => cell.Conclusion == Conclusion.Supported)
            .Take(1)
            .Where(cell => cell.Conclusion != Conclusion.NotAssessed);

    /// <summary>
    /// A sentence for each thing that, were it otherwise, would change a conclusion, with the time points that it would
    /// change; how many further specimens would do it stands behind each time point.
    /// </summary>
    private static IEnumerable<string> WouldBe(
        StudyAnalysis analysis,
        Func<Sequence, IEnumerable<Cell>> cells
    ) =>
        from sequence in analysis.Sequences
        let name = SequenceNames.Of(analysis, sequence).Code(analysis)
        from cell in cells(sequence)
        from line in cell.Robustness
        where line.Changes
        group new Place(name, cell.Key.TimePoint.ToString(), line.Further?.Count) by (
            line.Conclusion,
            Question: QuestionOf(line)
        ) into changed
        select $"Would be {TradeWords.Of(changed.Key.Conclusion)} {changed.Key.Question}: {Places(changed)}.";

    private static string QuestionOf(RobustnessLine line) =>
        line.Further is { } further
            ? $"if so many more specimens had {further.WouldHave}"
            : line.Question;

    /// <summary>"No anticoagulant at 6 h (1), 8 h (2); Unfractionated heparin at 6 h (1)".</summary>
    private static string Places(IEnumerable<Place> places) =>
        string.Join(
            "; ",
            places
                .GroupBy(place => place.Sequence)
                .Select(group => $"{group.Key} at {string.Join(", ", group)}")
        );

    private sealed record Place(string Sequence, string Time, int? Specimens)
    {
        public override string ToString() =>
            Specimens is { } count ? $"{Time} ({NumberText.Count(count)})" : Time;
    }

    private static IEnumerable<string> LeftOutNumbers(StudyAnalysis analysis) =>
        from sequence in analysis.Sequences
        let numbers = sequence
            .Cells.Select(LeftOut.InWords)
            .Where(text => text.Length > 0)
            .ToImmutableArray()
        where !numbers.IsEmpty
        select $"{SequenceNames.Of(analysis, sequence).Code(analysis)} at {string.Join("; ", numbers)}.";

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
        ImmutableArray<IGrouping<string, DataQuery>> kinds,
        SectionPages pages
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
            $"{NumberText.Count(kinds.Sum(kind => kind.Count()))} in {pages.Of(QuerySection.Title)}: {string.Join(", ", byCode)}.",
            ""
        );
    }
}
