using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>The examples of ISO 32000-1:2008, 7.3, as recalled, and their edges.</summary>
public static class ObjectReadingTests
{
    [Theory]
    [InlineData("(This is a string)", "This is a string")]
    [InlineData(
        "(balanced (parentheses) and special *!&}^%)",
        "balanced (parentheses) and special *!&}^%"
    )]
    [InlineData("()", "")]
    [InlineData("(two \\\nlines)", "two lines")]
    [InlineData("(two\r\nlines\rmore)", "two\nlines\nmore")]
    [InlineData("(\\n\\r\\t\\b\\f\\(\\)\\\\\\q)", "\n\r\t\b\f()\\q")]
    [InlineData("(\\245\\53\\0053\\053)", "\u00A5+\u00053+")]
    [InlineData("<901FA3>", "\u0090\u001F\u00A3")]
    [InlineData("<90 1F\nA>", "\u0090\u001F\u00A0")]
    [InlineData("<>", "")]
    public static void Strings_are_read(string written, string expected) =>
        Assert.Equal(
            expected,
            Encoding.Latin1.GetString(Assert.IsType<PdfString>(Read(written)).Bytes.AsSpan())
        );

    [Theory]
    [InlineData("/Name1", "Name1")]
    [InlineData("/A;Name_With-Various***Characters?", "A;Name_With-Various***Characters?")]
    [InlineData("/1.2", "1.2")]
    [InlineData("/A#42", "AB")]
    [InlineData("/paired#28#29parentheses", "paired()parentheses")]
    [InlineData("/The_Key_of_F#23_Minor", "The_Key_of_F#_Minor")]
    [InlineData("/", "")]
    public static void Names_are_read(string written, string expected) =>
        Assert.Equal(expected, Assert.IsType<PdfName>(Read(written)).Value);

    [Theory]
    [InlineData("123", 123)]
    [InlineData("+17", 17)]
    [InlineData("-98", -98)]
    [InlineData("0", 0)]
    [InlineData("0012", 12)]
    public static void Integers_are_read(string written, long expected) =>
        Assert.Equal(expected, Assert.IsType<PdfInteger>(Read(written)).Value);

    [Theory]
    [InlineData("34.5", 34.5)]
    [InlineData("-3.62", -3.62)]
    [InlineData("+123.6", 123.6)]
    [InlineData("4.", 4.0)]
    [InlineData("-.002", -0.002)]
    [InlineData("0.0", 0.0)]
    public static void Reals_keep_their_text(string written, double expected)
    {
        var real = Assert.IsType<PdfReal>(Read(written));

        Assert.Equal(expected, real.Value);
        Assert.Equal(written, real.Text);
    }

    [Fact]
    public static void Numbers_before_a_reference_stay_numbers()
    {
        var array = Assert.IsType<PdfArray>(
            Read(
                "[1 2 3 0 R 4 5 % comment\n 6 0 R -7 0 R]".Replace(
                    "-7 0 R",
                    "-7",
                    StringComparison.Ordinal
                )
            )
        );

        Assert.Equal(
            [
                new PdfInteger(1),
                new PdfInteger(2),
                new PdfReference(3, 0),
                new PdfInteger(4),
                new PdfInteger(5),
                new PdfReference(6, 0),
                new PdfInteger(-7),
            ],
            array.Items
        );
    }

    [Fact]
    public static void Keywords_end_at_delimiters()
    {
        var array = Assert.IsType<PdfArray>(Read("[true/false false[null]null]"));

        Assert.Equal(5, array.Items.Length);
        Assert.Equal(new PdfBoolean(true), array.Items[0]);
        Assert.Equal(new PdfName("false"), array.Items[1]);
        Assert.Equal(new PdfNull(), array.Items[4]);
    }

    [Fact]
    public static void A_stream_may_have_its_length_elsewhere()
    {
        var document = Rewritten.Read(
            HandMadePdf.Of(
                "<</Type/Catalog>>",
                "<</Length 3 0 R>>stream\r\nendstream endobj\nendstream",
                "16"
            )
        );

        var stream = Assert.IsType<PdfStream>(document.Resolve(new PdfReference(2, 0)));
        Assert.Equal("endstream endobj"u8.ToArray(), stream.Encoded.ToArray());
    }

    [Fact]
    public static void A_text_string_is_read_by_its_byte_order_mark()
    {
        Assert.Equal("≤ 7.5 %", PdfString.OfText("≤ 7.5 %").ToText());
        Assert.Equal("plain", PdfString.OfText("plain").ToText());
        Assert.Equal("é", new PdfString([0xEF, 0xBB, 0xBF, 0xC3, 0xA9]).ToText());
        Assert.Equal("é", new PdfString([0xE9]).ToText());
    }

    [Fact]
    public static void Object_streams_of_another_writer_are_read()
    {
        var document = Rewritten.Read(TestData.Read("object-streams.pdf"));
        var pages = document.ResolveDictionary(document.Catalog.Find("Pages"));

        Assert.Equal(new PdfInteger(3), pages?.Find("Count"));
        Assert.Contains(document.Objects, static found => found.Value is PdfStream);
    }

    [Fact]
    public static void A_reference_with_another_generation_leads_to_nothing()
    {
        var document = Rewritten.Read(HandMadePdf.Of("<</Type/Catalog>>"));

        Assert.NotNull(document.Resolve(new PdfReference(1, 0)));
        Assert.Null(document.Resolve(new PdfReference(1, 1)));
        Assert.Null(document.Resolve(null));
    }

    private static PdfObject? Read(string written)
    {
        var document = Rewritten.Read(HandMadePdf.Of("<</Type/Catalog>>", written));
        return document.Resolve(new PdfReference(2, 0));
    }
}
