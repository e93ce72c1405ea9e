using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>A table that was found in a delivered file, with what its dialect was found to be.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Sheet">Name of the sheet where the workbook has several; null otherwise.</param>
/// <param name="Shape">Where the table stands.</param>
/// <param name="Lines">Its dialect, as lines of study.toml.</param>
/// <param name="Settings">The same in words.</param>
/// <param name="Extent">Its size, and how much of it was looked at.</param>
internal sealed record DeliveredTable(
    string File,
    string? Sheet,
    TableShape Shape,
    ImmutableArray<ReadLine> Lines,
    ImmutableArray<SuggestedSetting> Settings,
    string Extent
)
{
    /// <summary>Our column for each header of which a standard says what stands below it; empty for a table of the facility's own.</summary>
    public ImmutableDictionary<string, string> Meanings { get; init; } =
        ImmutableDictionary<string, string>.Empty;

    /// <summary>What only a person can say of its dialect, with the lines that answer it.</summary>
    public ImmutableArray<DialectQuestion> Questions { get; init; } = [];

    /// <summary>Whether it comes from result messages.</summary>
    public bool IsOfMessages => !Meanings.IsEmpty;

    /// <summary>The tables of a file; none where nothing in it looks like one, with the reason.</summary>
    public static (ImmutableArray<DeliveredTable> Tables, string Reason) Of(
        string name,
        ReadOnlyMemory<byte> bytes,
        Func<string, bool> isName,
        StatedLayout stated,
        Surroundings study
    ) =>
        DeliveredMessages.Are(name, bytes.Span) ? DeliveredMessages.Of(name, bytes, stated, study)
        : Workbook.IsName(name) ? DeliveredSheets.Of(name, bytes, isName, stated)
        : DeliveredTextTable.Of(name, bytes, isName, stated);
}

/// <summary>A question about the dialect of a file.</summary>
/// <param name="Text">The question.</param>
/// <param name="Lines">The lines that answer it, the one that is tried first.</param>
internal sealed record DialectQuestion(string Text, ImmutableArray<ReadLine> Lines);
