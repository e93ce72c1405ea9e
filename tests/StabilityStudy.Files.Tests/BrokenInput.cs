using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>One change that breaks the good study, and the one query that it must give.</summary>
/// <param name="File">File that is changed.</param>
/// <param name="From">Text that is replaced.</param>
/// <param name="To">What replaces it.</param>
/// <param name="Code">Code of the query.</param>
/// <param name="Column">Column or key of the query.</param>
/// <param name="Says">A word of the message or the action.</param>
public sealed record BrokenInput(
    string File,
    string From,
    string To,
    string Code,
    string? Column,
    string Says
)
{
    /// <summary>Lines from the changed place to the line of the query.</summary>
    public int LinesBelow { get; init; }

    /// <summary>Whether the query is about the whole file.</summary>
    public bool WholeFile { get; init; }

    /// <summary>File of the query, when it is another one.</summary>
    public string? OtherFile { get; init; }

    public Severity Severity { get; init; } = Severity.Stop;

    /// <summary>Codes that may come with it.</summary>
    public string[] Along { get; init; } = [];

    public override string ToString() =>
        $"{Code}: {File}, {From} → {To}".Replace("\n", "⏎", StringComparison.Ordinal);
}
