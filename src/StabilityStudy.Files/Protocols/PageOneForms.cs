namespace StabilityStudy.Files.Protocols;

/// <summary>Forms of the laboratory's own words that stand on page 1, each with room for so many characters.</summary>
internal static class PageOneForms
{
    /// <summary>Who chose something.</summary>
    public static readonly ValueForm<string?> Chooser = Optional(60);

    /// <summary>Why it was chosen.</summary>
    public static readonly ValueForm<string?> Reason = Optional(200);

    /// <summary>What follows for a patient.</summary>
    public static readonly ValueForm<string?> Consequence = Optional(120);

    private static ValueForm<string?> Optional(int most) =>
        ValueForms.TextUpTo(most).As<string?>(null, text => text);
}
