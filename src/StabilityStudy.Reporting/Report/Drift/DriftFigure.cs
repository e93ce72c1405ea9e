using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>Change with time since collection: each specimen, the means, the fitted drift with its bounds, the allowable bias.</summary>
internal static class DriftFigure
{
    private const double RoomRight = 1.04;
    private const double EdgeInset = 0.05;
    private const int PointsBefore = 8;

    public static ChartBlock Of(
        StudyAnalysis analysis,
        Sequence sequence,
        Axis change,
        double heightMillimeters
    )
    {
        var names = SequenceNames.Of(analysis, sequence);
        var title = names.Title(analysis);
        return new ChartBlock(
            new Chart(title, HoursAxis(sequence, names), change, Layers(sequence, names, change)),
            heightMillimeters,
            AlternativeText(sequence, names),
            ""
        );
    }

    /// <summary>
    /// One axis of change for several figures, so that the eye can compare them. Changes flagged as outliers may lead out
    /// of the frame, where they would press the others flat.
    /// </summary>
    public static Axis ChangeAxis(IEnumerable<Sequence> sequences)
    {
        var all = sequences.ToImmutableArray();
        var changes = all.SelectMany(sequence => sequence.Cells)
            .SelectMany(ComparedChanges)
            .ToLookup(item => item.Pair.IsOutlier, item => item.Change);
        var values = changes[false]
            .Concat(
                all.SelectMany(sequence => sequence.Drift.Curve)
                    .SelectMany(point => new[] { point.LowerBound, point.UpperBound })
            )
            .Concat(
                all.Select(sequence => sequence.Drift.LimitPercent)
                    .OfType<double>()
                    .SelectMany(limit => new[] { -limit, limit })
            )
            .Concat(all.SelectMany(DriftFigureMeans.Ends))
            .Append(0);
        return AxisScale.ForMost("Change, %", values, changes[true]);
    }

    private static Axis HoursAxis(Sequence sequence, SequenceNames names)
    {
        var tested = sequence.Cells.Select(cell => cell.Key.TimePoint.Delay.TotalHours).ToArray();
        var longest = sequence
            .Cells.SelectMany(ComparedChanges)
            .Select(item => item.Hours)
            .Concat(tested)
            .Max();
        return AxisScale.Time(
            RoomRight * longest,
            [
                0,
                names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time.TotalHours,
                .. tested,
            ],
            OriginWords.Start(names.Origin)
        );
    }

    private static ImmutableArray<ChartLayer> Layers(
        Sequence sequence,
        SequenceNames names,
        Axis change
    )
    {
        var layers = ImmutableArray.CreateBuilder<ChartLayer>();
        layers.Add(new TrajectoriesLayer(Trajectories(sequence), "each specimen"));
        layers.Add(
            new ReferenceLine(
                LineDirection.Horizontal,
                0,
                DashStyle.Solid,
                LineWeight.Thin,
                null,
                null
            )
        );
        if (sequence.Drift.LimitPercent is { } limit)
        {
            layers.Add(
                new ReferenceLine(
                    LineDirection.Horizontal,
                    limit,
                    DashStyle.Dashed,
                    LineWeight.Medium,
                    null,
                    "allowable bias of the mean"
                )
            );
            layers.Add(
                new ReferenceLine(
                    LineDirection.Horizontal,
                    -limit,
                    DashStyle.Dashed,
                    LineWeight.Medium,
                    null,
                    null
                )
            );
        }

        layers.Add(
            new ReferenceLine(
                LineDirection.Vertical,
                names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time.TotalHours,
                DashStyle.DashDot,
                LineWeight.Thin,
                "today's window",
                null
            )
        );
        var longest = LongestDelay.Of(sequence);
        var curve = sequence.Drift.Curve.RemoveAll(point => point.Hours > longest);
        if (!curve.IsEmpty)
        {
            layers.Add(
                new LineLayer(
                    Positions(curve, point => point.Change),
                    DashStyle.Solid,
                    LineWeight.Heavy,
                    null,
                    "fitted drift"
                )
            );
            layers.Add(
                new LineLayer(
                    Positions(curve, point => point.UpperBound),
                    DashStyle.Dotted,
                    LineWeight.Medium,
                    null,
                    "95 % bounds"
                )
            );
            layers.Add(
                new LineLayer(
                    Positions(curve, point => point.LowerBound),
                    DashStyle.Dotted,
                    LineWeight.Medium,
                    null,
                    null
                )
            );
            layers.AddRange(BeforeBaseline(sequence));
            if (PublishedDrift.For(names) is { } published)
            {
                layers.Add(Published(published, curve));
            }

            layers.AddRange(Leaving(sequence, longest));
        }

        layers.AddRange(DriftFigureMeans.Of(sequence));
        layers.AddRange(BeyondFrame(sequence, change));
        return layers.ToImmutable();
    }

    /// <summary>The fitted curve carried back to the start: nobody measured it there.</summary>
    private static IEnumerable<LineLayer> BeforeBaseline(Sequence sequence) =>
        sequence.Drift.Estimate.Value is { BaselineDelayHours: > 0 and var baseline } drift
            ?
            [
                new LineLayer(
                    [
                        .. Enumerable
                            .Range(0, PointsBefore + 1)
                            .Select(i => baseline * i / PointsBefore)
                            .Select(hours => new Position(
                                hours,
                                DriftPrediction.At(drift, hours).Change
                            )),
                    ],
                    DashStyle.DashDot,
                    LineWeight.Heavy,
                    null,
                    "the fit before the baseline, not measured"
                ),
            ]
            : [];

    /// <summary>A ring where a bound first leaves the limit.</summary>
    private static IEnumerable<PointLayer> Leaving(Sequence sequence, double longest)
    {
        if (
            sequence.Drift
                is not {
                    LimitPercent: { } limit,
                    Crossing: CrossingTime.At at,
                    Misfits.IsEmpty: true
                }
            || at.Hours > longest
            || sequence.Drift.Estimate.Value is not { } drift
        )
        {
            return [];
        }

        var bounds = DriftPrediction.At(drift, at.Hours);
        var side =
            Math.Abs(bounds.UpperBound - limit) <= Math.Abs(bounds.LowerBound + limit)
                ? limit
                : -limit;
        return
        [
            new PointLayer(
                [new ChartPoint(at.Hours, side, DurationText.FormatComputed(at.Hours))],
                MarkerShape.OpenCircle,
                "a bound leaves the limit"
            ),
        ];
    }

    /// <summary>As change from the time at which the fitted curve starts.</summary>
    private static LineLayer Published(
        PublishedDrift published,
        ImmutableArray<DriftPoint> curve
    ) =>
        new(
            Positions(
                curve,
                point =>
                    published.PercentAfter(point.Hours) - published.PercentAfter(curve[0].Hours)
            ),
            DashStyle.LongDashed,
            LineWeight.Medium,
            null,
            "published, context only"
        );

    private static ImmutableArray<Position> Positions(
        ImmutableArray<DriftPoint> curve,
        Func<DriftPoint, double> value
    ) => [.. curve.Select(point => new Position(point.Hours, value(point)))];

    /// <summary>Changes that lead out of the frame: a mark at its edge with the specimen and the change.</summary>
    private static IEnumerable<ChartLayer> BeyondFrame(Sequence sequence, Axis change)
    {
        var inset = EdgeInset * (change.Maximum - change.Minimum);
        ImmutableArray<ChartPoint> points =
        [
            .. sequence
                .Cells.SelectMany(ComparedChanges)
                .Where(item => !change.Holds(item.Change))
                .Select(item => new ChartPoint(
                    item.Hours,
                    item.Change > 0 ? change.Maximum - inset : change.Minimum + inset,
                    $"{item.Pair.Specimen}: {NumberText.Change(item.Change, 0)} %"
                )),
        ];
        return points.IsEmpty ? [] : [new PointLayer(points, MarkerShape.FilledTriangle, null)];
    }

    internal static ImmutableArray<ImmutableArray<Position>> Trajectories(Sequence sequence) =>
        [
            .. sequence
                .Cells.SelectMany(ComparedChanges)
                .GroupBy(item => item.Pair.Specimen)
                .OrderBy(items => items.Key, StringComparer.Ordinal)
                .Select(items =>
                    items
                        .Select(item => new Position(item.Hours, item.Change))
                        .Prepend(
                            new Position(items.First().Pair.Baseline?.Delay?.TotalHours ?? 0, 0)
                        )
                        .ToImmutableArray()
                ),
        ];

    internal static IEnumerable<(PairRecord Pair, double Hours, double Change)> ComparedChanges(
        Cell cell
    ) =>
        cell
            .Pairs.Where(pair => pair is { ChangePercent: not null, Delayed.Delay: not null })
            .Select(pair =>
                (pair, pair.Delayed!.Delay!.Value.TotalHours, pair.ChangePercent!.Value)
            );

    private static string AlternativeText(Sequence sequence, SequenceNames names)
    {
        var means = sequence
            .Cells.Where(cell => cell.Estimates.MeanPercent.Value is not null)
            .Select(cell =>
                $"{NumberText.Change(cell.Estimates.MeanPercent.Value!.Mean, 1)} % at {cell.Key.TimePoint}"
            );
        var limit = sequence.Drift.LimitPercent is { } percent
            ? $" The allowable bias is ±{NumberText.Fixed(percent, 1)} %."
            : "";
        var beyond = sequence.Cells.Any(cell => cell.Pairs.Any(pair => pair.IsOutlier))
            ? " Flagged outliers beyond the frame are marked at its edge."
            : "";
        return $"Change of {names.Analyte.Id} with time, {names.Group.Name}. Mean change: {string.Join(", ", means)}.{limit}{beyond}";
    }
}
