namespace StabilityStudy.Pipeline.Tests;

/// <summary>One edit of the example and the query that it must give.</summary>
/// <param name="Code">Code of the query.</param>
/// <param name="File">File that is edited, and in which the query says the fault is.</param>
/// <param name="From">Text that is replaced, once.</param>
/// <param name="To">What replaces it.</param>
public sealed record BrokenStudy(string Code, string File, string From, string To)
{
    /// <summary>Lines from the edit to the place of the query.</summary>
    public int LinesBelow { get; init; }

    /// <summary>Text of the file on whose line the query says the fault is; the edited text itself otherwise.</summary>
    public string? Place { get; init; }

    /// <summary>Whether the query is about the whole file.</summary>
    public bool WholeFile { get; init; }

    /// <summary>File in which the query says the fault is, when it is another one.</summary>
    public string? QueryFile { get; init; }

    /// <summary>Line of the query in that other file.</summary>
    public int? QueryLine { get; init; }

    /// <summary>Whether the study is analyzed all the same.</summary>
    public bool GoesOn { get; init; }

    public override string ToString() => $"{Code}: {From} → {To}".ReplaceLineEndings("⏎");
}
