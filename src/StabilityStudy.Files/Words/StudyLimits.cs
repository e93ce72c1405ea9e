namespace StabilityStudy.Files.Words;

/// <summary>
/// How large the files of a study may be. The bounds lie far above any study and keep a hostile or wrong file from exhausting memory
/// or time; FORMATS.md states them.
/// </summary>
public static class StudyLimits
{
    /// <summary>Bytes of protocol.toml, study.toml, protocol.lock and each copy of a locked protocol.</summary>
    public const int TomlBytes = 1 << 20;

    /// <summary>Parts of a key written with points.</summary>
    public const int KeyParts = 16;

    /// <summary>Bytes of a table of data, and of all files of a study together.</summary>
    public const int TableBytes = 256 << 20;

    /// <summary>Lines of a table of data.</summary>
    public const int TableLines = 4_000_000;

    /// <summary>Bytes of a row, and of the header line.</summary>
    public const int RowBytes = 1 << 16;

    /// <summary>Bytes of a workbook.</summary>
    public const int WorkbookBytes = 64 << 20;

    /// <summary>Bytes of a workbook when it is unpacked.</summary>
    public const int UnpackedBytes = 256 << 20;

    /// <summary>Bytes of record.jsonl.</summary>
    public const int RecordBytes = 16 << 20;

    /// <summary>Lines of record.jsonl.</summary>
    public const int RecordLines = 20_000;

    /// <summary>Bytes of the analysis.json that a report carries.</summary>
    public const int AnalysisBytes = 64 << 20;

    /// <summary>Names and values in it.</summary>
    public const int AnalysisValues = 4_000_000;

    /// <summary>Bytes of a report.</summary>
    public const int ReportBytes = 128 << 20;

    /// <summary>Bytes of a signed protocol document.</summary>
    public const int DocumentBytes = 16 << 20;

    /// <summary>Bytes of a key, a certificate or a list of revoked certificates.</summary>
    public const int KeyBytes = 1 << 20;

    /// <summary>Most bytes that a file of this name may have.</summary>
    public static int BytesOf(string name) =>
        Path.GetExtension(name).ToUpperInvariant() switch
        {
            ".CSV" or ".TSV" or ".TXT" or ".HL7" => TableBytes,
            ".XLSX" => WorkbookBytes,
            ".JSONL" => RecordBytes,
            ".PDF" => DocumentBytes,
            _ => TomlBytes,
        };

    /// <summary>Bytes in the words of a message: "256 MiB".</summary>
    public static string InWords(long bytes) =>
        bytes % (1 << 20) == 0
            ? FormattableString.Invariant($"{bytes >> 20} MiB")
            : FormattableString.Invariant($"{bytes} bytes");
}
