namespace StabilityStudy.Core.Queries;

/// <summary>What a data query does to the report. The zero member is the safe answer.</summary>
public enum Severity
{
    /// <summary>No report is made until this is answered.</summary>
    Stop,

    /// <summary>A report is made, and this stands on its first page.</summary>
    Attention,

    /// <summary>A report is made, and this is listed in it.</summary>
    Note,
}

/// <summary>Where something was read.</summary>
/// <param name="File">File name inside the study folder.</param>
/// <param name="Line">Line of the file, counted from 1; null when the query is about the whole file or study.</param>
/// <param name="Column">Name of the column or key; null when the query is about a whole line.</param>
public sealed record QuerySource(string File, int? Line, string? Column)
{
    /// <summary>The place in words: "results.csv line 12, column result", "protocol.toml line 3, key code".</summary>
    public override string ToString()
    {
        var kind =
            File.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
            || File.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase)
            || File.EndsWith(".hl7", StringComparison.OrdinalIgnoreCase)
                ? "column "
                : "key ";
        var line = Line is { } number ? FormattableString.Invariant($" line {number}") : "";
        var column = Column is { } name ? (Line is null ? " " : ", ") + kind + name : "";
        return File + line + column;
    }
}

/// <summary>Something in the files that needs an answer.</summary>
/// <param name="Kind">What kind of query it is.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Observed">The text as read; empty when something is missing.</param>
/// <param name="Text">What is wrong, in words; the scope, where there is one, comes before them.</param>
/// <param name="Advice">What to do about it, where more can be said than its kind says of all; else null.</param>
public sealed record DataQuery(
    QueryKind Kind,
    QuerySource Source,
    string Observed,
    string Text,
    string? Advice = null
)
{
    /// <summary>Stable code, the same in every output.</summary>
    public string Code => Kind.Code;

    /// <summary>What it is about, where its words begin with that; null elsewhere.</summary>
    public QueryScope? Scope { get; init; }

    /// <summary>The specimen that it is about; null where it is about several or none.</summary>
    public QueriedSpecimen? Specimen { get; init; }

    /// <summary>What is wrong, and where.</summary>
    public string Message => Scope is null ? Text : $"{Scope}: {Text}";

    /// <summary>What to do about it.</summary>
    public string Action => Advice ?? Kind.Advice;

    /// <summary>What it means for the decision: what its kind means, unless another is given here.</summary>
    public QueryRank Rank { get; init; } = Kind.Rank;

    /// <summary>What it does to the report.</summary>
    public Severity Severity => Rank.Severity();

    /// <summary>What the words need beside what was read, for queries that cannot be raised again from a report; else empty.</summary>
    public QueryValues Values { get; init; }
}
