namespace StabilityStudy.Core.Queries;

/// <summary>A number with its noun: "1 specimen", "3 specimens".</summary>
public static class Counted
{
    /// <summary>The count with the noun in the singular or with an s.</summary>
    public static string Of(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");
}
