namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Specimens by name where they are few; else their number, and where the names are.</summary>
internal static class SpecimenNames
{
    /// <summary>More names than this are no longer read in a figure or a table.</summary>
    public const int Most = 6;

    public static string Of(ImmutableArray<string> specimens) =>
        specimens.IsEmpty ? "none"
        : specimens.Length <= Most ? string.Join(", ", specimens)
        : $"{NumberText.Count(specimens.Length)}, marked under Every specimen";
}
