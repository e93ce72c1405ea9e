using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>What the conclusions cover and what they do not.</summary>
internal static class CoverageSection
{
    public const string Title = "What the conclusions cover";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                Ranges(analysis),
                new Paragraph("They do not cover:", ParagraphStyle.Strong),
                new Bullets(NotCovered(analysis)),
            ]
        );

    private static Table Ranges(StudyAnalysis analysis) =>
        new(
            "Studied range",
            [
                new Column("Group", ColumnAlignment.Left, 2.6),
                new Column("Storage", ColumnAlignment.Left, 3),
                new Column("Baseline range", ColumnAlignment.Left, 1.6),
                new Column("Decision levels covered", ColumnAlignment.Left, 1.6),
                new Column("Not covered", ColumnAlignment.Left, 1.4),
                new Column("Instruments; lots, baseline", ColumnAlignment.Left, 1.6),
                new Column("Instruments; lots, delayed", ColumnAlignment.Left, 1.6),
            ],
            [.. analysis.Sequences.Select(sequence => Row(analysis, sequence))],
            $"Of the compared pairs of {analysis.Facts.Facility}. A decision level is covered when at least {NumberText.Count(LevelCoverage.FewestOnEitherSide)} baselines lie on either side of it."
        );

    private static Row Row(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var pairs = sequence
            .Cells.SelectMany(cell => cell.Pairs)
            .Where(pair => pair.Status == PairStatus.Compared)
            .ToImmutableArray();
        var specimens = pairs.DistinctBy(pair => pair.Specimen).ToImmutableArray();
        var baselines = specimens
            .Where(pair => pair.IsOfNumbers)
            .Select(pair => pair.Values().Baseline)
            .ToImmutableArray();
        var covered = names
            .Analyte.DecisionLevels.Where(level => IsCovered(level, baselines))
            .ToImmutableArray();
        return new Row([
            new TableCell(names.Title(analysis)),
            new TableCell(TradeWords.Of(names.Storage)),
            new TableCell(
                names.Analyte.IsQualitative
                    ? Classes(names.Analyte, specimens)
                    : StudiedRange.Of(sequence, names) ?? "none"
            ),
            new TableCell(Levels(covered)),
            new TableCell(Levels([.. names.Analyte.DecisionLevels.Except(covered)])),
            new TableCell(TestedWith(pairs.Select(pair => pair.Baseline))),
            new TableCell(TestedWith(pairs.Select(pair => pair.Delayed))),
        ]);
    }

    /// <summary>"20 negative, 12 weak positive, 8 positive".</summary>
    private static string Classes(Analyte analyte, ImmutableArray<PairRecord> specimens) =>
        string.Join(
            ", ",
            analyte.Categories.Select(
                (name, index) =>
                    $"{NumberText.Count(specimens.Count(pair => pair.Baseline?.Result is CategoryResult result && result.Category == index))} {name}"
            )
        );

    private static string TestedWith(IEnumerable<Measurement?> measurements)
    {
        var all = measurements.OfType<Measurement>().ToImmutableArray();
        return $"{Codes(all.Select(item => item.Instrument))}; {Codes(all.Select(item => item.Lot))}";
    }

    private static string Codes(IEnumerable<string> codes)
    {
        var recorded = codes
            .Where(code => code.Length > 0)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToImmutableArray();
        return recorded.IsEmpty ? "not recorded" : string.Join(", ", recorded);
    }

    private static bool IsCovered(decimal level, ImmutableArray<decimal> baselines) =>
        baselines.Count(value => value < level) >= LevelCoverage.FewestOnEitherSide
        && baselines.Count(value => value > level) >= LevelCoverage.FewestOnEitherSide;

    private static string Levels(ImmutableArray<decimal> levels) =>
        levels.IsEmpty ? "none" : string.Join(", ", levels.Select(NumberText.Plain));

    private static ImmutableArray<string> NotCovered(StudyAnalysis analysis)
    {
        var states = analysis.Protocol.Storages.Select(TradeWords.Of);
        return
        [
            $"Delays longer than {DurationText.Format(analysis.Protocol.TimePoints[^1].Delay)}, and delays beyond the supported window of each group.",
            $"Patient groups other than: {string.Join("; ", analysis.Protocol.Groups.Select(group => group.Name))}. {OfUnknown(analysis)}",
            $"Storage other than: {string.Join("; ", states)}. Nothing is said about iced, open, spun, frozen or transported tubes unless they are listed.",
            "Results outside the studied baseline range, and decision levels listed as not covered.",
            "Other laboratories and sites, instruments, reagents and lots than those listed; other tube types, additives and fill volumes; transport between sites.",
            $"Specimens that break the eligibility rules: {Eligibility(analysis.Protocol.Eligibility)}.",
            $"Time before the baseline: change between {OriginWords.Start(analysis.Protocol.TimeOrigin)} and the baseline test is not measured by any pair.",
        ];
    }

    private static string OfUnknown(StudyAnalysis analysis) =>
        UnknownGroup.Windows(analysis) is { IsEmpty: false } windows
            ? $"A specimen whose group is not known: {string.Join("; ", windows)}."
            : "A specimen of another or an unknown group keeps today's window.";

    private static string Eligibility(Eligibility rules)
    {
        var parts = new[]
        {
            rules.FillPercentMinimum is { } fill
                ? $"fill below {NumberText.Plain(fill)} % of nominal"
                : null,
            rules.HematocritPercentMaximum is { } hematocrit
                ? $"hematocrit above {NumberText.Plain(hematocrit)} %"
                : null,
            rules.RejectClot ? "a clot in the baseline tube" : null,
        }
            .OfType<string>()
            .ToImmutableArray();
        return parts.IsEmpty ? "the protocol states none" : string.Join(", ", parts);
    }
}
