namespace StabilityStudy.Core.Protocol;

/// <summary>Another window that some rule gives today, for the laboratory that follows it.</summary>
/// <param name="Name">What it is called: "older practice".</param>
/// <param name="Rule">The window with its source.</param>
public sealed record OtherWindow(string Name, WindowRule Rule)
{
    /// <summary>Code of the patient group that it is for; null for every group.</summary>
    public string? Group { get; init; }
}

/// <summary>Another limit that could have been chosen.</summary>
/// <param name="Name">What it is called: "desirable bias from biological variation".</param>
/// <param name="Percent">Percent of the baseline; null when only absolute, or when none can be computed.</param>
/// <param name="AbsoluteInUnit">Amount in the analyte's unit; null when only percent.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="WhyNot">Why it was not taken.</param>
public sealed record OtherLimit(
    string Name,
    decimal? Percent,
    decimal? AbsoluteInUnit,
    string Source,
    string WhyNot
);
