using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Files.Csv;

/// <summary>Numbers the names of columns: a name has the same number for good, so that no row has to look up names.</summary>
internal static class ColumnNames
{
    private static readonly Numbering<string> Numbers = new();

    /// <summary>The number of a name.</summary>
    public static int NumberOf(string name)
    {
        lock (Numbers)
        {
            return Numbers.Of(name);
        }
    }
}
