namespace StabilityStudy.Files.Csv;

/// <summary>
/// Finds the number that was split in two because it has a comma as its decimal sign and stands without quotes in a
/// file of which the fields are separated by commas.
/// </summary>
internal static class DecimalComma
{
    private const int NoPlace = -1;

    /// <summary>The column and the two halves of the number, when a row has one field too many and such a number.</summary>
    public static (string Column, string Whole, string Decimals)? Find(
        IReadOnlyList<string> fields,
        CsvColumns columns,
        IReadOnlyDictionary<string, int> places,
        int expected
    )
    {
        if (fields.Count != expected + 1)
        {
            return null;
        }

        // Where a number stands behind, it could be taken for the decimals of the number before it.
        var numbers = columns
            .All.Where(column =>
                column.Content is ColumnContent.Numbers or ColumnContent.WholeNumbers
            )
            .Select(column => places.GetValueOrDefault(column.Name, NoPlace))
            .ToHashSet();
        foreach (var column in columns.All.Where(IsTried).Select(column => column.Name))
        {
            if (places.TryGetValue(column, out var place) && !numbers.Contains(place + 1))
            {
                var (whole, decimals) = (fields[place], fields[place + 1]);
                if (IsDigits(whole.TrimStart('<', '>', '-')) && IsDigits(decimals))
                {
                    return (column, whole, decimals);
                }
            }
        }

        return null;
    }

    private static bool IsTried(Column column) =>
        column
            is { Content: ColumnContent.Results, Need: Need.Required }
                or { Content: ColumnContent.Numbers };

    private static bool IsDigits(string text) => text.Length > 0 && text.All(char.IsAsciiDigit);
}
