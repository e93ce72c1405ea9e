using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Csv;

/// <summary>The fields of the row that is being read: of a file in the usual form, or of a facility's own.</summary>
internal interface IRowFields
{
    /// <summary>How study.toml says that times are written; null when it does not.</summary>
    string? DateFormat { get; }

    /// <summary>Whether the file has a column.</summary>
    bool Has(Column column);

    /// <summary>Gives bytes of a field that are the same for the same text alone, valid until the next call; empty for an empty field.</summary>
    /// <returns>Whether the field can be taken at its word.</returns>
    bool TryGet(Column column, out ReadOnlySpan<byte> bytes);

    /// <summary>A field, valid until the next call; empty when the file has no such column.</summary>
    ReadOnlySpan<char> Characters(Column column, char[] buffer);

    /// <summary>The same as a text.</summary>
    string Text(Column column);

    /// <summary>The field as it stands in the file, for a query.</summary>
    string Observed(Column column);

    /// <summary>The facility's name of the column; empty when it is ours.</summary>
    string Where(Column column);

    /// <summary>Why the field cannot be taken at its word; null when it can.</summary>
    FieldFault? Fault(Column column);
}
