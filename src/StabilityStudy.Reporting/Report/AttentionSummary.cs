using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>What could change the decision, as short as page 1 needs it: pairs are gathered by what became of them, the rest by kind.</summary>
internal static class AttentionSummary
{
    private const int MostNames = 6;
    private const int MostOtherKinds = 5;

    private static readonly ImmutableHashSet<string> CodesSaidAbove =
    [
        "modified-test",
        "outlier-flagged",
        "delayed-tube-failed",
        "pair-excluded",
        "outside-timing",
        "baseline-invalid",
        "no-delayed-result",
        "specimen-ineligible",
        "beyond-measuring-interval",
    ];

    public static Attentions Of(StudyAnalysis analysis) =>
        new([
            new AttentionLine(
                "Protocol",
                TradeWords.Capital(TradeWords.Of(analysis.Lock)) + ".",
                ""
            ),
            .. analysis
                .Sequences.Select(sequence => RestsOn(analysis, sequence))
                .OfType<AttentionLine>(),
            .. ModifiedTests(analysis),
            .. OfPairs(analysis),
            .. OtherKinds(analysis),
        ]);

    /// <summary>
    /// What would take away the support of a supported time point. Earlier ones are named too: the window ends at the first
    /// time point that is not supported, so the weakest of them carries all.
    /// </summary>
    private static AttentionLine? RestsOn(StudyAnalysis analysis, Sequence sequence)
    {
        var changes =
            from cell in sequence.Cells
            where cell.Conclusion == Conclusion.Supported
            from line in cell.Robustness
            where line.Changes
            select $"{TradeWords.Of(line.Conclusion)} at {cell.Key.TimePoint} {line.Question}";
        return changes.Any()
            ? new AttentionLine(
                "Rests on",
                $"{SequenceNames.Of(analysis, sequence).Title(analysis)} would be {string.Join("; ", changes)}.",
                ""
            )
            : null;
    }

    private static IEnumerable<AttentionLine> ModifiedTests(StudyAnalysis analysis) =>
        from sequence in analysis.Sequences
        let window = sequence.Window
        where window is { ManufacturerLimit: ManufacturerStanding.Beyond }
        let names = SequenceNames.Of(analysis, sequence)
        let limit = names.Analyte.ManufacturerLimit
        where limit is not null
        select new AttentionLine(
            "Modified test",
            $"{names.Title(analysis)}: {DurationText.Format(window.Time)} is beyond the manufacturer's limit of {DurationText.Format(limit.Time)}.",
            ""
        );

    private static IEnumerable<AttentionLine> OfPairs(StudyAnalysis analysis) =>
        new (string Label, (string Text, Func<PairRecord, bool> Holds)[] Kinds)[]
        {
            (
                "Failed",
                [
                    (
                        "delayed tube failed, counted as outside",
                        pair => pair.Status == PairStatus.Failed
                    ),
                ]
            ),
            (
                "Left out",
                [
                    (
                        "by decision of a person, with reason",
                        pair => pair.Status == PairStatus.Excluded
                    ),
                    ("no valid baseline", pair => pair.Status == PairStatus.BaselineInvalid),
                    ("wrong time", pair => pair.Status == PairStatus.OutsideTiming),
                    ("no delayed result", pair => pair.Status == PairStatus.NoDelayedResult),
                    ("not eligible", pair => pair.Status == PairStatus.Ineligible),
                ]
            ),
            ("Outlier", [("flagged, kept in every figure", pair => pair.IsOutlier)]),
        }
            .Select(line =>
                (
                    line.Label,
                    Parts: line.Kinds.Select(kind =>
                            (kind.Text, Names: Names(analysis, kind.Holds))
                        )
                        .Where(kind => !kind.Names.IsEmpty)
                        .Select(kind => $"{kind.Text}: {Listed(kind.Names)}")
                        .ToImmutableArray()
                )
            )
            .Where(line => !line.Parts.IsEmpty)
            .Select(line => new AttentionLine(
                line.Label,
                TradeWords.Capital(string.Join("; ", line.Parts)) + ".",
                ""
            ));

    private static ImmutableArray<string> Names(
        StudyAnalysis analysis,
        Func<PairRecord, bool> holds
    ) =>
        [
            .. analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .SelectMany(cell =>
                    cell.Pairs.Where(holds).Select(pair => Name(analysis, cell, pair))
                ),
        ];

    private static string Name(StudyAnalysis analysis, Cell cell, PairRecord pair)
    {
        var analyte = analysis.Protocol.Analytes.Length > 1 ? cell.Key.Analyte + " " : "";
        return $"{analyte}{pair.Specimen} at {cell.Key.TimePoint}";
    }

    private static string Listed(ImmutableArray<string> names) =>
        names.Length <= MostNames
            ? string.Join(", ", names)
            : string.Join(", ", names.Take(MostNames))
                + $" and {NumberText.Count(names.Length - MostNames)} more";

    private static IEnumerable<AttentionLine> OtherKinds(StudyAnalysis analysis)
    {
        var kinds = analysis
            .Queries.Where(query =>
                query.Severity == Severity.Attention && !CodesSaidAbove.Contains(query.Code)
            )
            .GroupBy(query => query.Code)
            .ToImmutableArray();
        foreach (var kind in kinds.Take(MostOtherKinds))
        {
            var more =
                kind.Count() > 1
                    ? $" (and {NumberText.Count(kind.Count() - 1)} more of this kind)"
                    : "";
            yield return new AttentionLine("Attention", kind.First().Message + more, "");
        }

        if (kinds.Length > MostOtherKinds)
        {
            yield return new AttentionLine(
                "Attention",
                $"{NumberText.Count(kinds.Length - MostOtherKinds)} more kinds are listed under Data queries.",
                ""
            );
        }
    }
}
