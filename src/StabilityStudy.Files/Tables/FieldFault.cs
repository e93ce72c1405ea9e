namespace StabilityStudy.Files.Tables;

/// <summary>Why a field cannot be taken at its word.</summary>
/// <param name="Kind">The kind of query.</param>
/// <param name="Observed">What was read.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Action">What to do; null for what the kind says.</param>
/// <param name="Column">The column that is at fault; null for the one that was read.</param>
internal sealed record FieldFault(
    QueryKind Kind,
    string Observed,
    string Message,
    string? Action = null,
    string? Column = null
);
