using System.Text;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Each file has one thing wrong, and the failure says which.</summary>
public static class MalformedFileTests
{
    private const string Catalog = "<</Type/Catalog>>";

    [Fact]
    public static void The_hand_made_file_is_fine_before_anything_is_wrong() =>
        Assert.Equal(2, Rewritten.Read(HandMadePdf.Of(Catalog, "(second)")).Objects.Length);

    [Theory]
    [MemberData(nameof(WrongFiles))]
    [MemberData(nameof(WrongCrossReferences))]
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

    private static string Text(byte[] file) => Encoding.Latin1.GetString(file);
}
