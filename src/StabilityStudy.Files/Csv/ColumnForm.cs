namespace StabilityStudy.Files.Csv;

/// <summary>Reads a field that is not empty; after a query the value of an empty one.</summary>
internal delegate T ReadField<T>(CsvRow row, Column column, ReadOnlySpan<char> text);

/// <summary>How the fields of a column are written.</summary>
/// <param name="Allowed">What is allowed, in words.</param>
/// <param name="Content">What the fields hold.</param>
/// <param name="Absent">The value of an empty field, and of one that cannot be read.</param>
/// <param name="Read">Reads a field.</param>
/// <param name="Write">Writes a field of a canonical file.</param>
internal sealed record ColumnForm<T>(
    string Allowed,
    ColumnContent Content,
    T Absent,
    ReadField<T> Read,
    Action<CanonicalLine, T> Write
)
{
    /// <summary>Whether a field is a text in any words, which may have lines and spaces around it.</summary>
    public bool IsFreeText { get; init; }

    /// <summary>Whether a field is a code in whose place a laboratory's file may have the name of a person.</summary>
    public bool IsOfPersons { get; init; }

    /// <summary>Whether nearly every row has a text of its own, so that none is worth remembering.</summary>
    public bool IsOwnToRow { get; init; }

    /// <summary>The same with other words for what is allowed.</summary>
    public ColumnForm<T> Of(string allowed) => this with { Allowed = allowed };
}
