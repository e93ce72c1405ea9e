namespace StabilityStudy.Reporting.Pdf;

/// <summary>Widths of the columns of Table 1 in points.</summary>
internal static class DecisionColumns
{
    /// <summary>What follows.</summary>
    public static readonly double Left = PageFrame.Millimeters(41);

    /// <summary>The evidence, and what to weigh.</summary>
    public static readonly double Middle = PageFrame.Millimeters(105);

    /// <summary>The place of the decision.</summary>
    public static readonly double Right = PageFrame.Millimeters(22);

    /// <summary>Between two of them.</summary>
    public static readonly double Gutter = PageFrame.Millimeters(4);

    /// <summary>Before a reservation, for its number.</summary>
    public static readonly double Number = PageFrame.Millimeters(4.6);

    /// <summary>Of the evidence: waited, change, share, conclusion.</summary>
    public static readonly ImmutableArray<double> Evidence =
    [
        PageFrame.Millimeters(11),
        PageFrame.Millimeters(40.5),
        PageFrame.Millimeters(30.5),
        PageFrame.Millimeters(23),
    ];
}
