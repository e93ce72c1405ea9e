using System.Text;
using StabilityStudy.SignedPdf.Objects;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>What stands behind the last signature, and bytes changed before it.</summary>
internal static class ForgedTails
{
    private const string Added = "added after the last signature";
    private const string Unreadable = "The file cannot be read";

    private static long Newest =>
        ForgedRevision.Read(EvidenceExample.SignedTwice).Revisions[^1].CrossReferenceOffset;

    public static IEnumerable<ForgedFile> All { get; } =
    [
        new("text after the end", 2, "bytes after the end", () => With("\n% more\n")),
        new("zeros after the end", 2, "bytes after the end", () => With("\0\0\0\0")),
        new("a further end-of-file marker", 2, Unreadable, () => With("%%EOF\n")),
        new(
            "the right end written a second time",
            2,
            Unreadable,
            () => With(FormattableString.Invariant($"startxref\n{Newest}\n%%EOF\n"))
        ),
        new(
            "an end with an offset of forty digits",
            2,
            Unreadable,
            () => With($"startxref\n{Digits(Newest)}\n%%EOF\n")
        ),
        new(
            "a second file behind the first",
            2,
            Unreadable,
            () => [.. EvidenceExample.SignedTwice.Span, .. EvidenceExample.Unsigned.Span]
        ),
        new(
            "an end that leads back to the author's revision",
            2,
            Unreadable,
            () =>
                With(
                    FormattableString.Invariant(
                        $"startxref\n{ForgedRevision.Read(EvidenceExample.SignedOnce).Revisions[^1].CrossReferenceOffset}\n%%EOF\n"
                    )
                )
        ),
        new(
            "the end cut off",
            2,
            "bytes after the end",
            () => EvidenceExample.SignedTwice[..^9].ToArray()
        ),
        new(
            "a page painted over by an unsigned revision",
            2,
            Added,
            () =>
                ForgedRevision.Unsigned(
                    EvidenceExample.SignedTwice,
                    revision =>
                    {
                        var paint = revision.Add(ForgedRevisions.Paint);
                        revision.Change(revision.Page, page => page.With("Contents", paint));
                    }
                )
        ),
        new(
            "a page hidden by an unsigned revision",
            2,
            "Pages",
            () =>
                ForgedRevision.Unsigned(
                    EvidenceExample.SignedTwice,
                    revision =>
                        revision.Change(
                            Assert.IsType<PdfReference>(revision.Before.Catalog.Find("Pages")),
                            ForgedRevisions.WithoutLastPage
                        )
                )
        ),
        new(
            "the approver's field emptied by an unsigned revision",
            2,
            Added,
            () =>
                ForgedRevision.Unsigned(
                    EvidenceExample.SignedTwice,
                    revision =>
                        revision.Change(Field(revision, "signatory2"), field => field.Without("V"))
                )
        ),
        new(
            "a changed figure of the first page",
            1,
            "bytes were changed",
            () => Flipped(EvidenceExample.Unsigned.Length / 2)
        ),
        new(
            "a changed byte in the author's stamp",
            1,
            "bytes were changed",
            () => Flipped(EvidenceExample.Unsigned.Length + 2000)
        ),
        new(
            "bytes hidden in the room of the signature",
            1,
            "bytes are hidden in the room",
            () => Replaced("0000000000>", "00000000FF>")
        ),
        new(
            "the last signature in small letters",
            2,
            "another form than signing gives it",
            SmallLetters
        ),
        new(
            "the name in the signature changed",
            1,
            "bytes were changed",
            () => Replaced("/Name (Medical Director One)", "/Name (Medical Director Two)")
        ),
    ];

    public static PdfReference Field(Revision revision, string name) =>
        revision
            .Before.Objects.Single(found =>
                (found.Value as PdfDictionary)?.Find("FT") is not null
                && ((found.Value as PdfDictionary)?.Find("T") as PdfString)?.ToText() == name
            )
            .Reference;

    private static byte[] With(string tail) =>
        [.. EvidenceExample.SignedTwice.Span, .. Encoding.Latin1.GetBytes(tail)];

    private static string Digits(long offset) =>
        offset.ToString(CultureInfo.InvariantCulture).PadLeft(40, '0');

    private static byte[] Flipped(int place)
    {
        var bytes = EvidenceExample.SignedTwice.ToArray();
        bytes[place] ^= 1;
        return bytes;
    }

    private static byte[] Replaced(string from, string to)
    {
        var bytes = EvidenceExample.SignedTwice.ToArray();
        var place = bytes.AsSpan().LastIndexOf(Encoding.Latin1.GetBytes(from));
        Assert.True(place >= 0, from);
        Encoding.Latin1.GetBytes(to).CopyTo(bytes, place);
        return bytes;
    }

    private static byte[] SmallLetters()
    {
        var bytes = EvidenceExample.SignedTwice.ToArray();
        var start = bytes.AsSpan().LastIndexOf("/Contents <"u8) + "/Contents <".Length;
        for (var i = start; bytes[i] != (byte)'>'; i++)
        {
            bytes[i] = (byte)char.ToLowerInvariant((char)bytes[i]);
        }

        return bytes;
    }
}
