using System.Buffers;
using System.Text;
using CsCheck;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Writing;

public static class ObjectWritingTests
{
    private static readonly Gen<PdfObject> Simple = Gen.OneOf(
        Gen.Const((PdfObject)new PdfBoolean(true)),
        Gen.Long.Select(static value => (PdfObject)new PdfInteger(value)),
        Gen.Select(Gen.Int[-999, 999], Gen.Int[0, 999])
            .Select(
                static (whole, part) =>
                    (PdfObject)new PdfReal(FormattableString.Invariant($"{whole}.{part}"))
            ),
        Gen.Byte.Array[0, 40].Select(static bytes => (PdfObject)new PdfString([.. bytes])),
        Gen.Char['\u0001', '\u00FF']
            .Array[0, 20]
            .Select(static name => (PdfObject)new PdfName(new string(name))),
        Gen.Int[1, 99999].Select(static number => (PdfObject)new PdfReference(number, 0))
    );

    [Fact]
    public static void What_is_written_is_read_back_and_written_the_same() =>
        Gen.Recursive<PdfObject>(
                static (depth, inner) =>
                    depth > 4
                        ? Simple
                        : Gen.OneOf(
                            Simple,
                            inner
                                .Array[0, 4]
                                .Select(static items => (PdfObject)new PdfArray([.. items])),
                            Gen.Select(Gen.Char['\u0001', '\u00FF'].Array[1, 5], inner)
                                .Array[0, 4]
                                .Select(static entries =>
                                    (PdfObject)
                                        entries.Aggregate(
                                            PdfDictionary.Empty,
                                            static (all, entry) =>
                                                all.With(new string(entry.Item1), entry.Item2)
                                        )
                                )
                        )
            )
            .Sample(
                static value =>
                {
                    var written = Written(value);
                    var file = HandMadePdf.Of("<</Type/Catalog>>", written);
                    var read = Rewritten.Read(file).Find(new PdfReference(2, 0));
                    Assert.Equal(written, Written(Assert.IsAssignableFrom<PdfObject>(read)));
                },
                iter: 1000,
                seed: "0N0XIzNsQ0O2"
            );

    [Theory]
    [InlineData("plain", "(plain)")]
    [InlineData("a(b)c\\", "(a\\(b\\)c\\\\)")]
    [InlineData("", "()")]
    [InlineData("line\n", "<6C696E650A>")]
    [InlineData("ü", "<FEFF00FC>")]
    public static void Text_is_written_in_one_form(string text, string expected) =>
        Assert.Equal(expected, Written(PdfString.OfText(text)));

    [Fact]
    public static void Names_escape_what_would_end_them() =>
        Assert.Equal("/text#2Fcsv#20#23#28#E9", Written(new PdfName("text/csv #(é")));

    [Fact]
    public static void Entries_are_in_ordinal_order_whatever_order_they_came_in()
    {
        PdfEntry[] entries =
        [
            new("b", new PdfInteger(1)),
            new("a", new PdfInteger(2)),
            new("B", new PdfInteger(3)),
        ];

        Assert.Equal("<</B 3/a 2/b 1>>", Written(PdfDictionary.Of(entries)));
        Assert.Equal("<</B 3/a 2/b 1>>", Written(PdfDictionary.Of([.. entries.Reverse()])));
    }

    [Fact]
    public static void A_stream_says_how_long_it_is_whatever_its_dictionary_says()
    {
        var stream = new PdfStream(
            PdfDictionary.Of(new PdfEntry("Length", new PdfInteger(99))),
            "abc"u8.ToArray()
        );

        Assert.Equal("<</Length 3>>\nstream\nabc\nendstream", Written(stream));
    }

    [Fact]
    public static void Dictionaries_find_replace_and_drop_entries()
    {
        var one = PdfDictionary.Empty.With("K", new PdfInteger(1));

        Assert.Equal(new PdfInteger(2), one.With("K", new PdfInteger(2)).Find("K"));
        Assert.Equal(new PdfInteger(1), one.Find("K"));
        Assert.Null(one.Without("K").Find("K"));
        Assert.Same(one, one.Without("absent"));
        Assert.Throws<ArgumentException>(() => PdfDictionary.Of(one.Entries[0], one.Entries[0]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData(".")]
    [InlineData("1.2.3")]
    [InlineData("1.2e3")]
    [InlineData("+-1.0")]
    public static void A_text_that_is_no_real_number_throws(string text) =>
        Assert.Throws<ArgumentException>(() => new PdfReal(text));

    [Fact]
    public static void A_name_of_more_than_bytes_throws() =>
        Assert.Throws<ArgumentException>(() => new PdfName("≤"));

    private static string Written(PdfObject value)
    {
        var output = new ArrayBufferWriter<byte>();
        PdfWriter.Write(output, value);
        return Encoding.Latin1.GetString(output.WrittenSpan);
    }
}
