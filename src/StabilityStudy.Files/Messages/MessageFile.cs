using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Messages;

/// <summary>Files of HL7 v2 result messages.</summary>
internal static class MessageFile
{
    /// <summary>How the name of such a file ends.</summary>
    public const string Extension = ".hl7";

    /// <summary>Whether a name is that of a file of messages.</summary>
    public static bool IsName(string name) =>
        name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>The bytes of the messages; null after a query.</summary>
    public static ReadOnlyMemory<byte>? TextOf(
        ReadOnlyMemory<byte> bytes,
        FileLayout layout,
        string fileName,
        string section,
        QueryList queries
    )
    {
        MessageSettings.ReportUnused(layout, fileName, section, queries);
        if (bytes.Length > StudyLimits.TableBytes)
        {
            FileQueries.AddTooLarge(queries, fileName, StudyLimits.TableBytes);
            return null;
        }

        if (layout.Encoding == FileEncoding.Utf16)
        {
            return FileText.ToUtf8(bytes, layout.Encoding, fileName, queries) is { } text
                ? Utf8Text.WithoutMark(text)
                : null;
        }

        return OtherForm.ReportUtf16(bytes.Span, fileName, section, queries)
            ? null
            : Utf8Text.WithoutMark(bytes);
    }
}
