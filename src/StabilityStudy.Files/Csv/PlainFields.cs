using System.Collections.Frozen;
using CsvHelper;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Csv;

/// <summary>The fields of a row of a file in the usual form.</summary>
internal sealed class PlainFields(CsvReader reader, FrozenDictionary<string, int> places)
    : IRowFields
{
    /// <inheritdoc/>
    public string? DateFormat => null;

    /// <inheritdoc/>
    public bool Has(string column) => places.ContainsKey(column);

    /// <inheritdoc/>
    public ReadOnlySpan<char> Characters(Column column, char[] buffer) =>
        places.TryGetValue(column.Name, out var place)
            ? buffer.AsSpan(0, reader.GetChars(place, buffer))
            : [];

    /// <inheritdoc/>
    public string Text(Column column) =>
        places.TryGetValue(column.Name, out var place) ? reader.GetString(place) : "";

    /// <inheritdoc/>
    public string Observed(Column column) => Text(column);

    /// <inheritdoc/>
    public string Where(Column column) => "";

    /// <inheritdoc/>
    public FieldFault? Fault(Column column) => null;
}
