namespace StabilityStudy.Files.Csv;

/// <summary>Numbers the names of columns: a name has the same number for good, so that no row has to look up names.</summary>
internal static class ColumnNames
{
    private static readonly Dictionary<string, int> Numbers = new(StringComparer.Ordinal);

    /// <summary>The number of a name.</summary>
    public static int NumberOf(string name)
    {
        lock (Numbers)
        {
            if (!Numbers.TryGetValue(name, out var number))
            {
                number = Numbers.Count;
                Numbers.Add(name, number);
            }

            return number;
        }
    }
}
