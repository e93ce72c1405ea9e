using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys of "revision".</summary>
internal static class RevisionKeys
{
    private const int LeastDigits = 16;
    private const int MostDigits = 64;
    private const int LongestReason = 160;

    public static readonly KeyTable Table = new();

    /// <summary>An input digest or its beginning, at least as long as the foot of a page shows it.</summary>
    private static readonly ValueForm<string> Digest = Text.When(
        FormattableString.Invariant($"{LeastDigits} to {MostDigits} lower-case hexadecimal digits"),
        (table, key, text) =>
            (text.Length is >= LeastDigits and <= MostDigits && text.All(char.IsAsciiHexDigitLower))
            || table.Refuse(
                key,
                FileQueries.NotADigest,
                text,
                FormattableString.Invariant(
                    $"\"{text}\" is not an input digest: {LeastDigits} to {MostDigits} of the digits 0 to 9 and a to f."
                )
            )
    );

    // csharpier-ignore-start
    public static readonly Key<int> Number = Table.Add("number", Required, Whole(2, 999), "number of the revision; the first report has no such table and counts as 1", "2");
    public static readonly Key<string> Replaces = Table.Add("replaces", Required, Digest, "input digest of the report that it replaces: the whole, or its beginning after \"inputs\" at the foot of each page", "\"3f09c2d41b7a5e68\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, TextUpTo(LongestReason), "why, for page 1", "\"lot of the reagent corrected\"");
    // csharpier-ignore-end
}
