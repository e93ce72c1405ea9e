using CsvHelper;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Csv;

/// <summary>The fields of a row of a file in the usual form.</summary>
/// <param name="reader">Stands at the row.</param>
/// <param name="places">The place of each column that the file has, by the name of the column.</param>
internal sealed class PlainFields(CsvReader reader, IReadOnlyDictionary<string, int> places)
    : IRowFields
{
    private const int NoPlace = -1;
    private readonly int[] _places = ByNumber(places);

    /// <inheritdoc/>
    public string? DateFormat => null;

    /// <inheritdoc/>
    public bool Has(Column column) => PlaceOf(column) != NoPlace;

    /// <inheritdoc/>
    public bool TryGet(Column column, out ReadOnlySpan<byte> bytes)
    {
        var place = PlaceOf(column);
        bytes = place == NoPlace ? [] : reader.GetSpan(place);
        return true;
    }

    /// <inheritdoc/>
    public ReadOnlySpan<char> Characters(Column column, char[] buffer) =>
        PlaceOf(column) is var place && place != NoPlace
            ? buffer.AsSpan(0, reader.GetChars(place, buffer))
            : [];

    /// <inheritdoc/>
    public string Text(Column column) =>
        PlaceOf(column) is var place && place != NoPlace ? reader.GetString(place) : "";

    /// <inheritdoc/>
    public string Observed(Column column) => Text(column);

    /// <inheritdoc/>
    public string Where(Column column) => "";

    /// <inheritdoc/>
    public FieldFault? Fault(Column column) => null;

    private int PlaceOf(Column column) =>
        column.Number < _places.Length ? _places[column.Number] : NoPlace;

    private static int[] ByNumber(IReadOnlyDictionary<string, int> places)
    {
        var byNumber = new int[places.Keys.Max(ColumnNames.NumberOf) + 1];
        Array.Fill(byNumber, NoPlace);
        foreach (var (name, place) in places)
        {
            byNumber[ColumnNames.NumberOf(name)] = place;
        }

        return byNumber;
    }
}
