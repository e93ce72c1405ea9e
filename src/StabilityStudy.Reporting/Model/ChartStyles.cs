namespace StabilityStudy.Reporting.Model;

/// <summary>Shape of a marker; open and filled shapes stay apart in grayscale.</summary>
internal enum MarkerShape
{
    /// <summary>Open circle.</summary>
    OpenCircle,

    /// <summary>Filled circle.</summary>
    FilledCircle,

    /// <summary>Open square.</summary>
    OpenSquare,

    /// <summary>Filled square.</summary>
    FilledSquare,

    /// <summary>Open triangle.</summary>
    OpenTriangle,

    /// <summary>Filled triangle.</summary>
    FilledTriangle,

    /// <summary>Open rhombus.</summary>
    OpenDiamond,

    /// <summary>Filled rhombus.</summary>
    FilledDiamond,

    /// <summary>Slanted cross.</summary>
    Cross,
}

/// <summary>Dashing of a line.</summary>
internal enum DashStyle
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dashed,

    /// <summary>Dots.</summary>
    Dotted,

    /// <summary>Dash, dot.</summary>
    DashDot,

    /// <summary>Long dashes.</summary>
    LongDashed,
}

/// <summary>Thickness of a line.</summary>
internal enum LineWeight
{
    /// <summary>0.6 pt.</summary>
    Thin,

    /// <summary>1 pt.</summary>
    Medium,

    /// <summary>1.6 pt.</summary>
    Heavy,
}

/// <summary>Filling of a band; light gray and hatching can lie over each other.</summary>
internal enum BandFill
{
    /// <summary>Light gray.</summary>
    LightGray,

    /// <summary>Slanted thin lines.</summary>
    Hatched,
}

/// <summary>Direction of a reference line.</summary>
internal enum LineDirection
{
    /// <summary>At a value of the vertical axis.</summary>
    Horizontal,

    /// <summary>At a value of the horizontal axis.</summary>
    Vertical,
}

/// <summary>Where a name stands beside the frame of a chart.</summary>
internal enum NamePlace
{
    /// <summary>Right of it, at a value of the vertical axis.</summary>
    Edge,

    /// <summary>Above it, at a value of the horizontal axis.</summary>
    Top,
}
