using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>
/// The one figure of page 1: how far each analyte and group drifts from its baseline, against the allowable bias. The
/// sequences stand side by side on one axis: in percent where all share one limit in percent, otherwise as a multiple
/// of the allowable bias.
/// </summary>
internal static class FirstPageFigure
{
    /// <summary>With more sequences side by side the bounds of the curves would be a gray mass.</summary>
    private const int MostWithCurves = 2;

    /// <summary>Below this height in millimeters it cannot be read.</summary>
    public const double LeastHeight = 40;

    private const double MostHeight = 55;

    /// <summary>Part of a sequence's room that its longest delay takes; the rest keeps neighbors apart.</summary>
    private const double UsedWidth = 0.86;

    private const double Inset = 0.04;

    /// <summary>The figure; null where no mean is held to a limit.</summary>
    public static ChartBlock? Of(StudyAnalysis analysis)
    {
        var panels = Panels(analysis);
        if (panels.IsEmpty)
        {
            return null;
        }

        var limit = SharedPercent(panels);
        var withCurves = HasCurves(panels, limit);
        return new ChartBlock(
            new Chart(
                "",
                new Axis(
                    $"Time since {OriginWords.Start(analysis.Protocol.TimeOrigin)}",
                    0,
                    panels.Length,
                    [.. panels.SelectMany(panel => panel.Ticks(panels.Length))]
                ),
                ChangeAxis(panels, limit, withCurves),
                [
                    .. Limits(limit ?? 1),
                    .. panels.SelectMany(Today),
                    .. withCurves ? Fits(panels) : Joins(panels, limit),
                    .. Means(panels, limit),
                    .. panels.Select(panel => panel.Name),
                ]
            ),
            MostHeight,
            AlternativeText(panels, limit),
            $"Figure 1. {string.Join(" ", panels.Select(panel => $"{panel.FullName}: {MeanFinding.Of(panel.Sequence)}."))} Mean change since the baseline test with its interval{(withCurves ? "; curves: the fitted drift with one-sided 95 % bounds" : "; each panel has its own scale of time")}."
        );
    }

    /// <summary>Whether it shows the fitted drift of each sequence.</summary>
    public static bool HasCurves(StudyAnalysis analysis)
    {
        var panels = Panels(analysis);
        return !panels.IsEmpty && HasCurves(panels, SharedPercent(panels));
    }

    private static bool HasCurves(ImmutableArray<Panel> panels, double? sharedPercent) =>
        sharedPercent is not null && panels.Length <= MostWithCurves;

    private static ImmutableArray<Panel> Panels(StudyAnalysis analysis) =>
        [
            .. analysis
                .Sequences.Where(sequence => MeanFinding.Deciding(sequence).Any())
                .Select((sequence, index) => Panel.Of(analysis, sequence, index)),
        ];

    private static double? SharedPercent(ImmutableArray<Panel> panels)
    {
        var all = panels
            .SelectMany(panel => MeanFinding.Deciding(panel.Sequence))
            .Select(item => item.Bias);
        return
            all.All(bias => bias.Scale == ChangeScale.Percent)
            && all.Select(bias => bias.UpperLimit).Distinct().ToArray() is [{ } limit]
            ? limit
            : null;
    }

    /// <summary>A value of the mean on the axis: as it is, or as a multiple of the limit on its side.</summary>
    private static double OnAxis(BiasResult bias, double value, double? sharedPercent) =>
        sharedPercent is not null ? value
        : value < 0 ? value / -bias.LowerLimit!.Value
        : value / bias.UpperLimit!.Value;

    private static Axis ChangeAxis(
        ImmutableArray<Panel> panels,
        double? sharedPercent,
        bool withCurves
    ) =>
        AxisScale.For(
            sharedPercent is null ? "Mean change / allowable bias" : "Mean change, %",
            panels
                .SelectMany(panel => MeanFinding.Deciding(panel.Sequence))
                .SelectMany(item =>
                    Ends(item.Bias).Select(value => OnAxis(item.Bias, value, sharedPercent))
                )
                .Concat(
                    withCurves
                        ? panels
                            .SelectMany(panel => Curve(panel))
                            .SelectMany(point => new[] { point.LowerBound, point.UpperBound })
                        : []
                )
                .Concat([-(sharedPercent ?? 1), sharedPercent ?? 1, 0])
        );

    private static double[] Ends(BiasResult bias)
    {
        var mean = bias.Mean.Value!;
        return [mean.Lower, mean.Mean, mean.Upper];
    }

    private static IEnumerable<ReferenceLine> Limits(double limit) =>
        [
            Level(0, DashStyle.Solid, LineWeight.Thin, null),
            Level(limit, DashStyle.Dashed, LineWeight.Medium, "allowable bias"),
            Level(-limit, DashStyle.Dashed, LineWeight.Medium, null),
        ];

    private static ReferenceLine Level(
        double value,
        DashStyle dash,
        LineWeight weight,
        string? legend
    ) => new(LineDirection.Horizontal, value, dash, weight, null, legend);

    private static IEnumerable<ReferenceLine> Today(Panel panel) =>
        panel.Today is { } hours && hours <= panel.Longest
            ?
            [
                new ReferenceLine(
                    LineDirection.Vertical,
                    panel.X(hours),
                    DashStyle.DashDot,
                    LineWeight.Thin,
                    null,
                    panel.Index == 0 ? "today's window" : null
                ),
            ]
            : [];

    private static IEnumerable<LineLayer> Fits(ImmutableArray<Panel> panels) =>
        from panel in panels
        let curve = Curve(panel)
        where !curve.IsEmpty
        from line in new[]
        {
            Fit(panel, curve, point => point.Change, DashStyle.Solid, "fitted drift"),
            Fit(panel, curve, point => point.UpperBound, DashStyle.Dotted, "95 % bounds"),
            Fit(panel, curve, point => point.LowerBound, DashStyle.Dotted, null),
        }
        select line;

    private static ImmutableArray<DriftPoint> Curve(Panel panel)
    {
        var longest = LongestDelay.Of(panel.Sequence);
        return panel.Sequence.Drift.Curve.RemoveAll(point => point.Hours > longest);
    }

    private static LineLayer Fit(
        Panel panel,
        ImmutableArray<DriftPoint> curve,
        Func<DriftPoint, double> value,
        DashStyle dash,
        string? legend
    ) =>
        new(
            panel.Place([.. curve.Select(point => new Position(point.Hours, value(point)))]),
            dash,
            dash == DashStyle.Solid ? LineWeight.Heavy : LineWeight.Medium,
            null,
            panel.Index == 0 ? legend : null
        );

    private static IEnumerable<LineLayer> Joins(
        ImmutableArray<Panel> panels,
        double? sharedPercent
    ) =>
        panels.Select(panel => new LineLayer(
            panel.Place([
                new Position(panel.BaselineHours, 0),
                .. MeanFinding
                    .Deciding(panel.Sequence)
                    .Select(item => new Position(
                        Panel.HoursOf(item.Cell),
                        OnAxis(item.Bias, item.Bias.Mean.Value!.Mean, sharedPercent)
                    )),
            ]),
            DashStyle.Solid,
            LineWeight.Thin,
            null,
            null
        ));

    private static IEnumerable<IntervalLayer> Means(
        ImmutableArray<Panel> panels,
        double? sharedPercent
    ) =>
        from panel in panels
        from item in MeanFinding.Deciding(panel.Sequence)
        let mean = item.Bias.Mean.Value!
        let place = new ChartInterval(
            panel.X(Panel.HoursOf(item.Cell)),
            OnAxis(item.Bias, mean.Lower, sharedPercent),
            OnAxis(item.Bias, mean.Mean, sharedPercent),
            OnAxis(item.Bias, mean.Upper, sharedPercent)
        )
        group place by item.Bias.ConfidenceLevel into level
        orderby level.Key
        select new IntervalLayer(
            [.. level],
            MarkerShape.FilledSquare,
            $"mean, {NumberText.Percent(level.Key)} interval"
        );

    private static string AlternativeText(ImmutableArray<Panel> panels, double? sharedPercent)
    {
        var what = sharedPercent is { } percent
            ? $"Mean change from baseline in percent; the allowable bias is ±{NumberText.Plain((decimal)percent)} %."
            : "Mean change from baseline as a multiple of the allowable bias; the limits are −1 and 1.";
        var means = panels.Select(panel =>
            panel.FullName
            + ": "
            + string.Join(
                ", ",
                MeanFinding
                    .Deciding(panel.Sequence)
                    .Select(item =>
                        $"{NumberText.Change(OnAxis(item.Bias, item.Bias.Mean.Value!.Mean, sharedPercent), sharedPercent is null ? 2 : 1)} at {item.Cell.Key.TimePoint}"
                    )
            )
        );
        return $"{what} {string.Join("; ", means)}.";
    }

    /// <summary>The room of one sequence on the axis: its delays from left to right, one unit wide.</summary>
    private sealed record Panel(
        Sequence Sequence,
        int Index,
        string FullName,
        NamedRange Name,
        double Longest,
        double? Today,
        double BaselineHours
    )
    {
        public static Panel Of(StudyAnalysis analysis, Sequence sequence, int index)
        {
            var names = SequenceNames.Of(analysis, sequence);
            var full = names.Title(analysis);
            var baselines = sequence
                .Cells.SelectMany(DriftFigure.ComparedChanges)
                .Select(item => item.Pair.Baseline?.Delay?.TotalHours ?? 0)
                .DefaultIfEmpty(0)
                .Average();
            return new Panel(
                sequence,
                index,
                full,
                new NamedRange(index, index + 1, names.Code(analysis)),
                sequence
                    .Cells.SelectMany(DriftFigure.ComparedChanges)
                    .Select(item => item.Hours)
                    .Concat(sequence.Cells.Select(cell => cell.Key.TimePoint.Delay.TotalHours))
                    .Max(),
                names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time.TotalHours,
                baselines
            );
        }

        public static double HoursOf(Cell cell) =>
            DriftFigure
                .ComparedChanges(cell)
                .Select(item => item.Hours)
                .DefaultIfEmpty(cell.Key.TimePoint.Delay.TotalHours)
                .Average();

        /// <summary>The times tested; collection and today's window too, where there is room beside them.</summary>
        public ImmutableArray<Tick> Ticks(int panels)
        {
            var ticks = Sequence
                .Cells.Select(cell => new Tick(
                    X(cell.Key.TimePoint.Delay.TotalHours),
                    cell.Key.TimePoint.ToString()
                ))
                .ToImmutableArray();
            foreach (var hours in new[] { 0, Today ?? 0 }.Where(hours => hours <= Longest))
            {
                var x = X(hours);
                if (ticks.All(tick => Math.Abs(tick.Value - x) >= TickRoom * panels))
                {
                    ticks = ticks.Add(
                        new(x, hours == 0 ? "0" : DurationText.Format(TimeSpan.FromHours(hours)))
                    );
                }
            }

            return ticks;
        }

        /// <summary>The width of a label of a tick, as a share of the figure's.</summary>
        private const double TickRoom = 0.06;

        public double X(double hours) => Index + Inset + (UsedWidth * hours / Longest);

        public ImmutableArray<Position> Place(ImmutableArray<Position> positions) =>
            [.. positions.Select(position => position with { X = X(position.X) })];
    }
}
