namespace StabilityStudy.Core.Specimens;

/// <summary>A result as reported by the instrument.</summary>
/// <param name="Text">The text as read.</param>
public abstract record ReportedResult(string Text);

/// <summary>A number.</summary>
/// <param name="Text">The text as read.</param>
/// <param name="Value">The number, in the analyte's unit, with the decimals as reported.</param>
public sealed record MeasuredResult(string Text, decimal Value) : ReportedResult(Text);

/// <summary>A result beyond what the method reports: "&gt;180" or "&lt;0.27".</summary>
/// <param name="Text">The text as read.</param>
/// <param name="Side">On which side the true value lies.</param>
/// <param name="Limit">The limit, in the analyte's unit.</param>
public sealed record CensoredResult(string Text, CensoredSide Side, decimal Limit)
    : ReportedResult(Text);

/// <summary>A result of a qualitative test.</summary>
/// <param name="Text">The text as read.</param>
/// <param name="Category">Place among the analyte's categories, from 0 for the most negative.</param>
public sealed record CategoryResult(string Text, int Category) : ReportedResult(Text);

/// <summary>No result.</summary>
/// <param name="Text">The text as read.</param>
/// <param name="Reason">Why.</param>
public sealed record MissingResult(string Text, MissingReason Reason) : ReportedResult(Text);

/// <summary>On which side of a limit the true value lies.</summary>
public enum CensoredSide
{
    /// <summary>Below the limit.</summary>
    Below,

    /// <summary>Above the limit.</summary>
    Above,
}

/// <summary>Why there is no result.</summary>
public enum MissingReason
{
    /// <summary>No reason stated: no reportable result (empty, NA).</summary>
    NoReportableResult,

    /// <summary>A clot.</summary>
    Clot,

    /// <summary>Fibrin strands.</summary>
    Fibrin,

    /// <summary>Hemolysis.</summary>
    Hemolysis,

    /// <summary>The instrument reported an error.</summary>
    InstrumentError,

    /// <summary>Too little plasma.</summary>
    QuantityNotSufficient,

    /// <summary>Not tested.</summary>
    NotTested,

    /// <summary>The storage failed: a cracked vial, a thawed freezer, a lost seal.</summary>
    StorageFailure,
}
