using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of "repeat".</summary>
internal static class RepeatKeys
{
    private const int Digits = 64;

    public static readonly KeyTable Table = new();

    private static readonly ValueForm<string> s_digest = Text.When(
        "64 hexadecimal digits, lower case",
        (table, key, text) =>
            (text.Length == Digits && text.All(char.IsAsciiHexDigitLower))
            || table.Refuse(
                key,
                FileQueries.NotADigest,
                text,
                $"\"{key.Name}\" is not the digest of a report's inputs.",
                "Let start --repeat write it, or copy all 64 digits from analysis.json of the original."
            )
    );

    // csharpier-ignore-start
    public static readonly Key<string> Report = Table.Add("report", Required, Text, "name of the original report", "\"WB-RT-12-3f09c2d4\"");
    public static readonly Key<string> Digest = Table.Add("digest", Required, s_digest, "digest of the original's inputs", $"\"{new string('0', Digits)}\"");
    public static readonly Key<RepeatTier> Tier = Table.Add("tier", Required, Word(FileWords.RepeatTiers), "how much is repeated: full for a new reagent, principle, tube type, instrument or transport, reduced for a new lot of the same reagent", "\"reduced\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "what changed", "\"new lot R-2602\"");
    // csharpier-ignore-end

    public static RepeatOf Read(TomlTable table) =>
        new(table.Read(Report), table.Read(Digest), table.Read(Tier), table.Read(Reason));
}
