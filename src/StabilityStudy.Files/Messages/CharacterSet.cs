using System.Text;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// How the characters of a message are stored, as MSH-18 states it (HL7 Version 2.5.1, chapter 2; the names are those of its table 0211, from memory).
/// Fields that are not read are never decoded.
/// </summary>
/// <param name="Name">The name, for a query.</param>
/// <param name="Encoding">How bytes become characters.</param>
internal sealed record CharacterSet(string Name, Encoding Encoding)
{
    private const string IsoPrefix = "8859/";
    private const int IsoPages = 28590;
    private const int WindowsPage = 1252;

    /// <summary>The sets that are read, in words.</summary>
    public const string Known = "ASCII, 8859/1 to 8859/9, 8859/15 and UNICODE UTF-8";

    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>The set that a message states; null for one that is not read.</summary>
    /// <param name="stated">First entry of MSH-18; empty where the message states none.</param>
    /// <param name="otherwise">What study.toml says of messages that state none.</param>
    public static CharacterSet? Of(string stated, FileEncoding otherwise) =>
        stated switch
        {
            "" => otherwise switch
            {
                // Without a statement characters are ASCII, and what is valid UTF-8 beyond it is hardly anything else.
                FileEncoding.Utf8 or FileEncoding.Utf16 => new("ASCII or UTF-8", Utf8),
                FileEncoding.Latin1 => Page("latin-1", IsoPages + 1),
                FileEncoding.Windows1252 => Page("windows-1252", WindowsPage),
            },
            "ASCII" => Page(stated, "us-ascii"),
            "UNICODE UTF-8" or "UTF-8" => new(stated, Utf8),
            // The bytes of the file have become UTF-8 by encoding = "utf-16".
            "UNICODE UTF-16" or "UNICODE" when otherwise == FileEncoding.Utf16 => new(stated, Utf8),
            _ => stated.StartsWith(IsoPrefix, StringComparison.Ordinal)
            && int.TryParse(
                stated.AsSpan(IsoPrefix.Length),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var part
            )
            && part is (>= 1 and <= 9) or 15
                ? Page(stated, IsoPages + part)
                : null,
        };

    private static CharacterSet Page(string name, int page) => new(name, Strict(page));

    private static CharacterSet Page(string name, string encoding) =>
        new(
            name,
            Encoding.GetEncoding(
                encoding,
                EncoderFallback.ExceptionFallback,
                DecoderFallback.ExceptionFallback
            )
        );

    private static Encoding Strict(int page) =>
        page == IsoPages + 1
            ? Encoding.Latin1
            : CodePagesEncodingProvider.Instance.GetEncoding(
                page,
                EncoderFallback.ExceptionFallback,
                DecoderFallback.ExceptionFallback
            ) ?? throw new InvalidOperationException($"There is no code page {page}.");
}
