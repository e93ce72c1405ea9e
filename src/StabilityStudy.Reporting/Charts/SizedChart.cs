namespace StabilityStudy.Reporting.Charts;

/// <summary>A chart with the size in which it is drawn, in points.</summary>
internal sealed record SizedChart(Chart Chart, int Width, int Height)
{
    /// <summary>Least room above the frame, so that frames side by side are level.</summary>
    public double LeastTop { get; init; }

    /// <summary>Least room below the frame.</summary>
    public double LeastBottom { get; init; }

    /// <summary>Length at which the label of the vertical axis is broken; stays when the chart gets higher.</summary>
    public double LabelLength { get; init; } = Height * 0.5;

    /// <summary>Whether the names of lines stand in the legend because there is no room beside the frame.</summary>
    public bool NamesInLegend { get; init; }

    /// <summary>Charts side by side: each has room for its frame; those of one height have level frames.</summary>
    public static ImmutableArray<SizedChart> Level(ImmutableArray<SizedChart> asked)
    {
        var sameHeight = asked.All(c => c.Height == asked[0].Height);
        var roomy = asked.Select(ChartMargins.WithRoom).ToImmutableArray();
        ImmutableArray<SizedChart> charts = sameHeight
            ? [.. roomy.Select(c => c with { Height = roomy.Max(r => r.Height) })]
            : roomy;
        if (charts.Length < 2 || !sameHeight)
        {
            return charts;
        }

        var margins = charts.Select(ChartMargins.Of).ToArray();
        return
        [
            .. charts.Select(c =>
                c with
                {
                    LeastTop = margins.Max(m => m.Top),
                    LeastBottom = margins.Max(m => m.Bottom),
                }
            ),
        ];
    }
}
