using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Intake;

/// <summary>The files of a study folder as the shell read them: name → content.</summary>
public sealed record StudyBytes(ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> Files)
{
    /// <summary>Name of the protocol.</summary>
    public const string ProtocolName = "protocol.toml";

    /// <summary>Name of the study facts.</summary>
    public const string FactsName = "study.toml";

    /// <summary>Name of the notice that ends a study without a conclusion.</summary>
    public const string EndingName = "ended.pdf";

    // A spreadsheet program puts a file of such a name beside each workbook that is open.
    private const string OpenWorkbook = "~$";

    private static readonly ImmutableHashSet<string> s_extensions = ImmutableHashSet.Create(
        StringComparer.OrdinalIgnoreCase,
        ".toml",
        ".csv",
        ".xlsx",
        MessageFile.Extension,
        ".tsv",
        ".txt",
        ".lock",
        ".jsonl"
    );

    /// <summary>Whether a name is that of a file a study may consist of; others are left alone.</summary>
    public static bool Belongs(string name) =>
        Path.GetFileName(name) == EndingName
        || s_extensions.Contains(Path.GetExtension(name))
            && !name.Contains(OpenWorkbook, StringComparison.Ordinal);

    /// <summary>Gathers files.</summary>
    public static StudyBytes Of(IEnumerable<KeyValuePair<string, ReadOnlyMemory<byte>>> files) =>
        new(files.ToImmutableSortedDictionary(StringComparer.Ordinal));

    /// <summary>Names of the tables of data.</summary>
    public ImmutableArray<string> Tables => [.. Files.Keys.Where(PlainNames.IsTable)];

    /// <summary>Whether a table of data has a row below its header line.</summary>
    public bool HasRows =>
        Tables.Any(name =>
            Workbook.IsName(name)
            || (MessageFile.IsName(name) && Files[name].Span.IndexOf("OBX"u8) >= 0)
            || Files[name].Span.TrimEnd("\r\n"u8) is var text && text.IndexOf((byte)'\n') >= 0
        );

    /// <summary>The same with a file added or replaced.</summary>
    public StudyBytes With(string name, ReadOnlyMemory<byte> bytes) =>
        new(Files.SetItem(name, bytes));
}
