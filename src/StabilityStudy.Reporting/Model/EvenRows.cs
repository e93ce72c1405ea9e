namespace StabilityStudy.Reporting.Model;

/// <summary>Things that stand in rows, or on sheets, of which none is left to one of its own: of five, three and two.</summary>
internal static class EvenRows
{
    /// <summary>How many stand in a row.</summary>
    /// <param name="count">How many there are.</param>
    /// <param name="most">How many at most stand in a row.</param>
    public static int Length(int count, int most)
    {
        var rows = Math.Max(1, (count + most - 1) / most);
        return Math.Max(1, (count + rows - 1) / rows);
    }
}
