using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Reporting.Report.Figures;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Every specimen from its baseline to its delayed result across the decision levels, in the order of the baselines.</summary>
internal static class SideChangePlot
{
    private const double Height = 58;

    /// <summary>Specimens from one tick to the next.</summary>
    private const int TickStep = 10;

    /// <summary>The figure; null where no pair has two numbers.</summary>
    public static ChartBlock? Of(
        ReclassificationResult result,
        Cell cell,
        SequenceNames names,
        CellAxes axes
    )
    {
        var pairs = cell
            .Pairs.Where(pair => pair.IsOfNumbers)
            .OrderBy(pair => pair.Values().Baseline)
            .ThenBy(pair => pair.Specimen, StringComparer.Ordinal)
            .ToImmutableArray();
        if (pairs.IsEmpty)
        {
            return null;
        }

        var changed = result
            .Levels.SelectMany(level => level.ChangedSpecimens)
            .ToImmutableHashSet(StringComparer.Ordinal);
        return new ChartBlock(
            new Chart("", Specimens(pairs.Length), axes.Results, Layers()),
            Height,
            AlternativeText(result, cell, names),
            "Each specimen from its baseline to its delayed result, in the order of the baselines."
        );

        ImmutableArray<ChartLayer> Layers() =>
            [
                .. DecisionLevels.Across(
                    axes.Results,
                    LineDirection.Horizontal,
                    result.Levels.Select(level => level.Level)
                ),
                new TrajectoriesLayer(
                    [.. pairs.Select((pair, i) => Line(pair, i + 1))],
                    "change of a specimen"
                ),
                Points(
                    _ => true,
                    pair => pair.Values().Baseline,
                    MarkerShape.OpenDiamond,
                    "baseline"
                ),
                Points(
                    pair => !changed.Contains(pair.Specimen),
                    pair => pair.Values().Delayed,
                    MarkerShape.FilledCircle,
                    "delayed"
                ),
                .. changed.Count > 0 ? [Changed()] : ImmutableArray<ChartLayer>.Empty,
            ];

        PointLayer Changed() =>
            Points(
                pair => changed.Contains(pair.Specimen),
                pair => pair.Values().Delayed,
                MarkerShape.FilledTriangle,
                changed.Count <= SpecimenNames.Most
                    ? "delayed, side changed, named"
                    : "delayed, side changed, see Every specimen",
                named: changed.Count <= SpecimenNames.Most
            );

        PointLayer Points(
            Func<PairRecord, bool> isShown,
            Func<PairRecord, decimal> value,
            MarkerShape marker,
            string legend,
            bool named = false
        ) =>
            new(
                [
                    .. pairs
                        .Index()
                        .Where(item => isShown(item.Item))
                        .Select(item => new ChartPoint(
                            item.Index + 1,
                            (double)value(item.Item),
                            named ? item.Item.Specimen : null
                        )),
                ],
                marker,
                legend
            );
    }

    private static ImmutableArray<Position> Line(PairRecord pair, int place) =>
        [new(place, (double)pair.Values().Baseline), new(place, (double)pair.Values().Delayed)];

    private static Axis Specimens(int count) =>
        new(
            "Specimens in the order of their baselines",
            0,
            count + 1,
            [
                .. Enumerable
                    .Range(1, count)
                    .Where(place => place == 1 || place % TickStep == 0)
                    .Select(place => new Tick(place, NumberText.Count(place))),
            ]
        );

    private static string AlternativeText(
        ReclassificationResult result,
        Cell cell,
        SequenceNames names
    )
    {
        var levels = result.Levels.Select(level =>
            $"{NumberText.Plain(level.Level)} {names.Analyte.ShownUnit}".TrimEnd()
            + $": {SpecimenNames.Of(level.ChangedSpecimens)}"
        );
        return $"{names.Analyte.Id} of each specimen at baseline and at {cell.Key.TimePoint}, in the order of the baselines. Changed side of {string.Join("; of ", levels)}.";
    }
}
