using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Each object has one thing wrong, and the failure says which and where.</summary>
public static class MalformedObjectTests
{
    private const string Catalog = "<</Type/Catalog>>";

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
}
