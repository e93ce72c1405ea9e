using System.Text;

namespace StabilityStudy.Files.Csv;

/// <summary>Turns the bytes of a file with another encoding into UTF-8.</summary>
internal static class FileText
{
    private const int WindowsCodePage = 1252;

    /// <summary>The bytes as UTF-8; null after a query when they are not text of the encoding.</summary>
    public static ReadOnlyMemory<byte>? ToUtf8(
        ReadOnlyMemory<byte> bytes,
        FileEncoding encoding,
        string fileName,
        QueryList queries
    )
    {
        if (encoding == FileEncoding.Utf8)
        {
            return bytes;
        }

        if (encoding is FileEncoding.Latin1 or FileEncoding.Windows1252)
        {
            var read =
                encoding == FileEncoding.Latin1
                    ? Encoding.Latin1
                    : CodePagesEncodingProvider.Instance.GetEncoding(WindowsCodePage)!;
            return Encoding.UTF8.GetBytes(read.GetString(bytes.Span));
        }

        try
        {
            var isBigEndian = bytes.Span is [0xFE, 0xFF, ..];
            var utf16 = new UnicodeEncoding(isBigEndian, byteOrderMark: false, true);
            return Encoding.UTF8.GetBytes(utf16.GetString(bytes.Span));
        }
        catch (DecoderFallbackException)
        {
            queries.Add(
                FileQueries.NotUtf8,
                new QuerySource(fileName, null, null),
                "",
                "The file is not UTF-16 text, which study.toml says it is.",
                "Correct encoding in study.toml, or save the file again."
            );
            return null;
        }
    }
}
