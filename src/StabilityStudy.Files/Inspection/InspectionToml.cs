using StabilityStudy.Core.Inspection;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Notices;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Inspection;

/// <summary>Reads and writes inspection.toml, which says how an inspection folder was made.</summary>
public static class InspectionToml
{
    /// <summary>Name of the file.</summary>
    public const string Name = "inspection.toml";

    /// <summary>Most years for which records may be said to be kept.</summary>
    public const int MostYears = 100;

    private const int Format = 1;

    /// <summary>Reads how a folder was made.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <returns>What it says, or the queries that stop.</returns>
    public static Outcome<InspectionTerms> Read(ReadOnlyMemory<byte> utf8)
    {
        var queries = new QueryList();
        if (TomlDocument.Read(utf8, Name, queries) is not { } entries)
        {
            return Outcome.Stopped<InspectionTerms>(queries.ToImmutable());
        }

        var root = TomlTable.Root(entries, InspectionKeys.Table, Name, queries);
        FormatNumber.Check(root, InspectionKeys.Format, Format);
        var terms = new InspectionTerms(
            root.Read(InspectionKeys.AsOf),
            root.Read(InspectionKeys.MadeAt),
            root.Read(InspectionKeys.Tool),
            root.Read(InspectionKeys.KeepYears)
        )
        {
            IsOnLetter = root.Read(InspectionKeys.Paper),
            SpinTakes = root.Read(InspectionKeys.SpinTakes),
            Trusted = Certificates(root, InspectionKeys.Trusted),
            TrustedForTime = Certificates(root, InspectionKeys.TrustedForTime),
        };
        return queries.StopCount > 0
            ? Outcome.Stopped<InspectionTerms>(queries.ToImmutable())
            : Outcome.Of(terms, queries.ToImmutable());
    }

    /// <summary>Writes how a folder was made.</summary>
    public static ReadOnlyMemory<byte> Write(InspectionTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        var text = new TomlWriter();
        text.Bare(InspectionKeys.Format, TomlWriter.Number(Format));
        text.Line(InspectionKeys.AsOf, TomlWriter.Day(terms.AsOf));
        text.Line(InspectionKeys.MadeAt, LockFile.Time(terms.MadeAt));
        text.Line(InspectionKeys.Tool, terms.ToolVersion);
        text.Line(InspectionKeys.Paper, InspectionKeys.Papers.Write(terms.IsOnLetter));
        text.Bare(InspectionKeys.KeepYears, TomlWriter.Number(terms.KeepYears));
        text.Line(
            InspectionKeys.SpinTakes,
            terms.SpinTakes is { } time ? DurationText.Format(time) : null
        );
        Append(text, InspectionKeys.Trusted, terms.Trusted);
        Append(text, InspectionKeys.TrustedForTime, terms.TrustedForTime);
        return text.ToUtf8();
    }

    private static ImmutableArray<TrustedCertificate> Certificates(TomlTable root, TableKey key) =>
        [
            .. root.Tables(key, isRequired: false)
                .Select(table => new TrustedCertificate(
                    table.Read(TrustedKeys.Name),
                    table.Read(TrustedKeys.Sha256)
                )),
        ];

    private static void Append(
        TomlWriter text,
        TableKey key,
        ImmutableArray<TrustedCertificate> certificates
    )
    {
        foreach (var certificate in certificates)
        {
            text.Head($"[[{key.Name}]]");
            text.Line(TrustedKeys.Name, certificate.Name);
            text.Line(TrustedKeys.Sha256, certificate.Sha256);
        }
    }
}

/// <summary>The keys of inspection.toml. The program writes them.</summary>
internal static class InspectionKeys
{
    public static readonly KeyTable Table = new();

    public static readonly WordSet<bool> Papers = new(("A4", false), ("Letter", true));

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Table);
    public static readonly Key<DateOnly> AsOf = Table.Add("as_of", Required, Date, "the day as of which the register is shown", "\"2026-05-04\"");
    public static readonly Key<DateTimeOffset> MadeAt = Table.Add("made_at", Required, LockKeys.Moment, "when the files were verified, by the clock of that computer", "\"2026-05-04T10:00:00-05:00\"");
    public static readonly Key<string> Tool = Table.Add("tool", Required, Text, "version of the program that made the folder", "\"0.6.0\"");
    public static readonly Key<bool> Paper = Table.Add("paper", Required, Word(Papers), "paper of the documents", "\"A4\"");
    public static readonly Key<int> KeepYears = Table.Add("keep_years", Required, Whole(1, InspectionToml.MostYears), "years for which records are kept after their last use", "2");
    public static readonly Key<TimeSpan?> SpinTakes = Table.Add("spin_takes", Optional, LongDuration.OrNone(), "time from the spin to the test at the bench; what the protocols say when not given", "\"30 min\"");
    public static readonly TableKey Trusted = Table.AddTables("trusted", Optional, TrustedKeys.Table, "the certificates trusted to vouch for signers", "[[trusted]]");
    public static readonly TableKey TrustedForTime = Table.AddTables("trusted_for_time", Optional, TrustedKeys.Table, "the certificates trusted to vouch for time-stamp authorities", "[[trusted_for_time]]");
    // csharpier-ignore-end
}

/// <summary>The keys of a trusted certificate.</summary>
internal static class TrustedKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "whose certificate it is", "\"Medical Director One\"");
    public static readonly Key<string> Sha256 = Table.Add("sha256", Required, DigestForm.Sha256, "SHA-256 of the certificate", DigestForm.Example);
    // csharpier-ignore-end
}
