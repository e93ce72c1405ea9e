using System.IO.Compression;
using System.Text;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Each cross-reference stream or object stream has one thing wrong, and the failure says which.</summary>
public static class MalformedStreamTests
{
    private const string CompressedContent = "4 0 (found)";

    [Fact]
    public static void The_hand_made_file_is_fine_before_anything_is_wrong()
    {
        var document = Rewritten.Read(
            HandMadePdf.WithStreams("/Type/ObjStm/N 1/First 4", CompressedContent)
        );

        Assert.NotNull(document.Resolve(document.Catalog.Find("X")));
    }

    [Theory]
    [MemberData(nameof(WrongStreams))]
    public static void A_malformed_file_is_a_failure_that_says_why(string what, string file)
    {
        Assert.False(
            PdfDocumentReader
                .Read(HandMadePdf.Bytes(file))
                .TryGet(out var document, out var failure)
        );
        Assert.Null(document);
        Assert.Contains(what, failure.What, StringComparison.Ordinal);
    }

    [Fact]
    public static void A_stream_that_grows_beyond_all_bounds_is_a_failure()
    {
        using var compressed = new MemoryStream();
        using (var zlib = new ZLibStream(compressed, CompressionLevel.Fastest, leaveOpen: true))
        {
            zlib.Write(new byte[ReadingLimits.StructureLength + 1]);
        }

        var bomb = Encoding.Latin1.GetString(compressed.ToArray());
        var file = HandMadePdf.WithStreams(
            "/Type/ObjStm/N 1/First 4/Filter/FlateDecode",
            bomb,
            rows: BombRows(bomb.Length)
        );

        Assert.False(PdfDocumentReader.Read(file).TryGet(out _, out var failure));
        Assert.Contains("bound", failure.What, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> WrongStreams()
    {
        const string Good = "/Type/ObjStm/N 1/First 4";
        (string What, byte[] File)[] cases =
        [
            ("dictionary says", HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 2]/Size 5")),
            (
                "dictionary says",
                HandMadePdf.WithStreams(Good, CompressedContent, "/W[0 0 0]/Size 5")
            ),
            (
                "dictionary says",
                HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 9 1]/Size 5")
            ),
            (
                "dictionary says",
                HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 -2 1]/Size 5")
            ),
            (
                "dictionary says",
                HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 2 1]/Size 6")
            ),
            (
                "dictionary says",
                HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 2 1]/Size 5/Index[0]")
            ),
            (
                "dictionary says",
                HandMadePdf.WithStreams(
                    Good,
                    CompressedContent,
                    "/W[1 2 1]/Size 5/Index[0 8000000]"
                )
            ),
            ("dictionary says", HandMadePdf.WithStreams(Good, CompressedContent, "/W[1 2 1]")),
            (
                "dictionary says",
                HandMadePdf.WithStreams(
                    Good,
                    CompressedContent,
                    rows: HandMadePdf.Row(3, 1, 0) + new string('\0', 16)
                )
            ),
            (
                "cannot be decoded",
                HandMadePdf.WithStreams(
                    Good,
                    CompressedContent,
                    "/W[1 2 1]/Size 5/Filter/FlateDecode"
                )
            ),
            (
                "cannot be decoded",
                HandMadePdf.WithStreams(
                    Good,
                    CompressedContent,
                    "/W[1 2 1]/Size 5/Filter/LZWDecode"
                )
            ),
            (
                "no object stream",
                HandMadePdf.WithStreams("/Type/Other/N 1/First 4", CompressedContent)
            ),
            (
                "no object stream",
                HandMadePdf.WithStreams("/Type/ObjStm/N -1/First 4", CompressedContent)
            ),
            (
                "no object stream",
                HandMadePdf.WithStreams("/Type/ObjStm/N 1/First 99", CompressedContent)
            ),
            (
                "not in order",
                HandMadePdf.WithStreams("/Type/ObjStm/N 2/First 4", CompressedContent)
            ),
            (
                "not in order",
                HandMadePdf.WithStreams("/Type/ObjStm/N 2/First 8", "4 0 5 0 (found)")
            ),
            ("not in order", HandMadePdf.WithStreams("/Type/ObjStm/N 1/First 5", "4 99 (found)")),
            ("overlap", HandMadePdf.WithStreams("/Type/ObjStm/N 2/First 8", "4 0 5 3 (found)")),
            ("announced place", HandMadePdf.WithStreams(Good, "5 0 (found)")),
            ("announced place", HandMadePdf.WithStreams("/Type/ObjStm/N 0/First 4", "4 0 (found)")),
            ("expected here", HandMadePdf.WithStreams(Good, "4 0 endobj")),
            (
                "missing",
                HandMadePdf.WithStreams(
                    Good,
                    CompressedContent,
                    rows: "\0\0\0\0"
                        + HandMadePdf.Row(1, 9, 0)
                        + new string('\0', 8)
                        + HandMadePdf.Row(2, 2, 0)
                )
            ),
        ];
        var data = new TheoryData<string, string>();
        foreach (var (what, file) in cases)
        {
            data.Add(what, Encoding.Latin1.GetString(file));
        }

        return data;
    }

    private static string BombRows(int length)
    {
        var third = "%PDF-1.7\n1 0 obj\n<</Type/Catalog/X 4 0 R>>\nendobj\n".Length;
        Assert.True(length > 1000);
        return "\0\0\0\0"
            + HandMadePdf.Row(1, 9, 0)
            + HandMadePdf.Row(1, third, 0)
            + "\0\0\0\0"
            + HandMadePdf.Row(2, 2, 0);
    }
}
