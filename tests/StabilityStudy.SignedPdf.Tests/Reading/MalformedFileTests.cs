using System.Globalization;
using System.IO.Compression;
using System.Text;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Each file has one thing wrong, and the failure says which.</summary>
public static class MalformedFileTests
{
    private const string Catalog = "<</Type/Catalog>>";
    private const string CompressedContent = "4 0 (found)";

    [Fact]
    public static void The_hand_made_files_are_fine_before_anything_is_wrong()
    {
        Rewritten.Read(HandMadePdf.Of(Catalog, "(second)"));
        var document = Rewritten.Read(
            HandMadePdf.WithStreams("/Type/ObjStm/N 1/First 4", CompressedContent)
        );

        Assert.NotNull(document.Resolve(document.Catalog.Find("X")));
    }

    [Theory]
    [MemberData(nameof(WrongFiles))]
    [MemberData(nameof(WrongCrossReferences))]
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

    [Theory]
    [MemberData(nameof(WrongObjects))]
    public static void A_malformed_object_is_a_failure_that_says_why(string what, string value)
    {
        var file = HandMadePdf.Of(Catalog, value);

        Assert.False(PdfDocumentReader.Read(file).TryGet(out _, out var failure));
        Assert.Contains(what, failure.What, StringComparison.Ordinal);
        Assert.InRange(failure.Offset ?? -1, 40, file.Length);
    }

    [Theory]
    [InlineData("[", "]")]
    [InlineData("<</A", ">>")]
    public static void Nesting_is_read_up_to_the_limit_and_not_beyond(string open, string close)
    {
        var deepest = Nested(open, close, ReadingLimits.Depth);
        var deeper = Nested(open, close, ReadingLimits.Depth + 1);
        var endless = string.Concat(Enumerable.Repeat(open, 1_000_000));

        Rewritten.Read(HandMadePdf.Of(Catalog, deepest));
        Assert.False(
            PdfDocumentReader.Read(HandMadePdf.Of(Catalog, deeper)).TryGet(out _, out var failure)
        );
        Assert.Contains("too deep", failure.What, StringComparison.Ordinal);
        Assert.False(PdfDocumentReader.Read(HandMadePdf.Of(Catalog, endless)).TryGet(out _, out _));
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

    [Fact]
    public static void Objects_hidden_in_each_other_are_refused_before_they_cost_time()
    {
        // Each object reaches to the end of the file and holds all later ones: quadratic for a reader that parses them all.
        const int Count = 20_000;
        var body = new StringBuilder("%PDF-1.7\n1 0 obj<</Type/Catalog>>endobj\n");
        var table = new StringBuilder(
            $"xref\n0 {Count + 2}\n0000000000 65535 f \n0000000009 00000 n \n"
        );
        for (var number = 2; number < Count + 2; number++)
        {
            table.Append(CultureInfo.InvariantCulture, $"{body.Length:D10} 00000 n \n");
            body.Append(CultureInfo.InvariantCulture, $"{number} 0 obj(");
        }

        body.Append(string.Concat(Enumerable.Repeat(")endobj\n", Count)));
        table.Append(CultureInfo.InvariantCulture, $"trailer<</Root 1 0 R/Size {Count + 2}>>\n");
        var file = HandMadePdf.WithEnding(body.ToString(), table.ToString());

        Assert.False(PdfDocumentReader.Read(file).TryGet(out _, out var failure));
        Assert.Contains("overlap", failure.What, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> WrongFiles()
    {
        var good = Text(HandMadePdf.Of(Catalog));
        return new()
        {
            { "does not begin", "" },
            { "does not begin", "%PDF" },
            { "does not begin", " " + good },
            { "does not begin", good.Replace("%PDF-1", "%PDF-9", StringComparison.Ordinal) },
            { "does not end", "%PDF-1.7\n" },
            { "does not end", good[..^6] },
            { "does not end", good.Replace("startxref", "startxxxx", StringComparison.Ordinal) },
            {
                "does not end",
                good.Replace("startxref\n", "startxref\n99999999999999", StringComparison.Ordinal)
            },
            { "bytes after the end", good + "junk" },
            { "bytes after the end", good + "\n" },
            { "twice", Text(HandMadePdf.WithTrailer("/Root 1 0 R/Root 1 0 R", Catalog)) },
            { "no catalog", Text(HandMadePdf.WithTrailer("", Catalog)) },
            { "no catalog", Text(HandMadePdf.WithTrailer("/Root 7 0 R", Catalog)) },
            { "no catalog", Text(HandMadePdf.WithTrailer("/Root 1 0 R", "(no dictionary)")) },
            { "no catalog", Text(HandMadePdf.WithTrailer("/Root 1 0 R", "1 0 R")) },
            { "encrypted", Text(HandMadePdf.WithTrailer("/Root 1 0 R/Encrypt 1 0 R", Catalog)) },
            { "fewer objects", Text(HandMadePdf.WithTrailer("/Root 1 0 R/Size 1", Catalog)) },
            { "fewer objects", Text(HandMadePdf.WithTrailer("/Root 1 0 R/Size(2)", Catalog)) },
            { "both kinds", Text(HandMadePdf.WithTrailer("/Root 1 0 R/XRefStm 9", Catalog)) },
            { "does not lie before", Text(HandMadePdf.WithTrailer("/Root 1 0 R/Prev 0", Catalog)) },
            {
                "does not lie before",
                Text(HandMadePdf.WithTrailer("/Root 1 0 R/Prev 46", Catalog))
            },
            {
                "does not lie before",
                Text(HandMadePdf.WithTrailer("/Root 1 0 R/Prev 9999", Catalog))
            },
            {
                "does not lie before",
                Text(HandMadePdf.WithTrailer("/Root 1 0 R/Prev null", Catalog))
            },
            {
                "does not begin here",
                Text(HandMadePdf.WithTrailer("/Root 1 0 R/Prev 12", Catalog))
            },
        };
    }

    public static TheoryData<string, string> WrongCrossReferences()
    {
        const string Body = "%PDF-1.7\n1 0 obj\n<</Type/Catalog>>\nendobj\n";
        const string Free = "0000000000 65535 f \n";
        const string Trailer = "trailer\n<</Root 1 0 R/Size 9>>\n";
        (string What, string Section)[] cases =
        [
            ("trailer, is expected", "xref\n"),
            ("trailer, is expected", "xref\n0\n" + Trailer),
            ("how long", "xref\n0 x\n" + Trailer),
            ("how long", "xref\n0 99999999\n" + Trailer),
            ("longer than", "xref\n0 900000\n" + Free + Trailer),
            ("longer than", "xref\n8388607 1\n" + Free + Trailer),
            ("twenty bytes", "xref\n0 1\n0000000000 65535 f\n" + Trailer),
            ("twenty bytes", "xref\n0 1\n00000000x0 65535 f \n" + Trailer),
            ("twenty bytes", "xref\n0 1\n0000000000 65535 q \n" + Trailer),
            ("twenty bytes", "xref\n0 1\n9999999999 65535 n \n" + Trailer),
            ("twenty bytes", "xref\n0 1\n0000000009 65536 n \n" + Trailer),
            ("not a dictionary", "xref\n0 1\n" + Free + "trailer\n[]\n"),
            ("does not end", "xref\n0 1\n" + Free + "trailer\n<<"),
            ("does not begin here", "xref\n1 1\n0000000010 00000 n \n" + Trailer),
            ("does not begin here", "xref\n2 1\n0000000009 00000 n \n" + Trailer),
            ("does not begin here", "xref\n1 1\n0000000009 00001 n \n" + Trailer),
            ("beyond the end", "xref\n1 1\n0000009999 00000 n \n" + Trailer),
            ("overlap", "xref\n1 2\n0000000009 00000 n \n0000000009 00000 n \n" + Trailer),
            (
                "own startxref",
                "xref\n1 1\n0000000009 00000 n \n" + Trailer + "startxref\n7\n%%EOF\n"
            ),
            ("table or stream", "8 0 obj\n[]\nendobj\n"),
        ];
        var data = new TheoryData<string, string>();
        foreach (var (what, section) in cases)
        {
            data.Add(what, Text(HandMadePdf.WithEnding(Body, section)));
        }

        return data;
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
            data.Add(what, Text(file));
        }

        return data;
    }

    public static TheoryData<string, string> WrongObjects() =>
        new()
        {
            { "does not end", "(never closed" },
            { "does not end", "(one ( closed )" },
            { "does not end", "(escape at the end \\" },
            { "hexadecimal", "<0G>" },
            { "hexadecimal", "<00" },
            { "In a name", "/A#4" },
            { "In a name", "/A#00" },
            { "too long", "/" + new string('A', 600) },
            { "expected here", "[1 2" },
            { "expected here", "]" },
            { "expected here", "truely" },
            { "expected here", "" },
            { "begin with a name", "<<1 2>>" },
            { "begin with a name", "<</A 1" },
            { "expected here", "<</A>>" },
            { "twice", "<</A 1/A 2>>" },
            { "twice", "<</A 1/#41 2>>" },
            { "Not a number", "1.2.3" },
            { "Not a number", "--1" },
            { "Not a number", "1e5" },
            { "Not a number", "." },
            { "Not a number", "99999999999999999999" },
            { "Not a number", new string('1', 5000) + ".0" },
            { "where it should", "1 2" },
            { "where it should", "1 70000 R" },
            { "usable length", "<<>>stream\nA\nendstream" },
            { "usable length", "<</Length -1>>stream\nA\nendstream" },
            { "usable length", "<</Length 99999>>stream\nA\nendstream" },
            { "usable length", "<</Length 2 0 R>>stream\nA\nendstream" },
            { "usable length", "<</Length 9 0 R>>stream\nA\nendstream" },
            { "length says", "<</Length 3>>stream\nAAAAAAAA\nendstream" },
            { "end of line", "<</Length 1>>stream A\nendstream" },
            { "end of line", "<</Length 1>>stream\rA\nendstream" },
            { "where it should", "[]stream\nA\nendstream" },
        };

    private static string Nested(string open, string close, int depth) =>
        string.Concat(Enumerable.Repeat(open, depth - 1))
        + "[]"
        + string.Concat(Enumerable.Repeat(close, depth - 1));

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

    private static string Text(byte[] file) => Encoding.Latin1.GetString(file);
}
