using System.Text;
using StabilityStudy.SignedPdf.Compression;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

/// <summary>What each step does to the one thing it is for, in files made by hand.</summary>
public static class RewriteStepTests
{
    private static readonly RewriteOptions Bare = new("Title", null, "tool", null, null, []);

    [Fact]
    public static void Entries_of_the_catalog_that_are_not_replaced_stay()
    {
        var catalog = Catalog(
            "<</Type/Catalog/Lang(de)/Version/1.4/PieceInfo<<>>/AcroForm<</Fields[2 0 R]/SigFlags 3>>/PageLabels<</Nums[0<</S/D>>]>>/Names<</Dests<</Names[]>>>>>>",
            "<</FT/Sig/T(author)/Type/Annot/Subtype/Widget/Rect[0 0 9 9]/F 4>>"
        );

        Assert.Equal(
            ["AcroForm", "Lang", "Metadata", "Names", "OutputIntents", "PageLabels", "Type"],
            catalog.Entries.Select(static entry => entry.Name),
            StringComparer.Ordinal
        );
        Assert.NotNull((catalog.Find("Names") as PdfDictionary)?.Find("Dests"));
        Assert.Equal("de", (catalog.Find("Lang") as PdfString)?.ToText());
    }

    [Fact]
    public static void Bookmarks_with_others_below_are_counted_as_closed_ones()
    {
        var document = Rewritten.Read(
            Rewritten.Of(
                HandMadePdf.Of(
                    "<</Type/Catalog/Outlines 2 0 R/A 3 0 R/B 6 0 R>>",
                    "<</Type/Outlines/First 3 0 R/Last 6 0 R>>",
                    "<</Title(A)/Parent 2 0 R/Next 6 0 R/First 4 0 R/Last 5 0 R>>",
                    "<</Title(A1)/Parent 3 0 R/Next 5 0 R>>",
                    "<</Title(A2)/Parent 3 0 R/Prev 4 0 R/Next 4 0 R>>",
                    "<</Title(B)/Parent 2 0 R/Prev 3 0 R>>"
                ),
                Bare
            )
        );
        PdfObject? CountOf(string entry) =>
            Assert
                .IsType<PdfDictionary>(document.Resolve(document.Catalog.Find(entry)))
                .Find("Count");

        Assert.Equal(new PdfInteger(2), CountOf("Outlines"));
        Assert.Equal(new PdfInteger(-2), CountOf("A"));
        Assert.Null(CountOf("B"));
    }

    [Fact]
    public static void An_intent_that_a_file_has_stays_alone() =>
        Assert.Equal(
            "[<</S /GTS_PDFX>>]",
            Written(
                Catalog("<</Type/Catalog/OutputIntents[<</S/GTS_PDFX>>]>>").Find("OutputIntents")
            )
        );

    [Fact]
    public static void Dates_and_random_names_go_and_what_is_only_named_like_them_stays()
    {
        var catalog = Catalog(
            "<</Type/Catalog/A<</Rect[0 0 1 1]/Subtype/Link/M(D:2026)/NM(random)/Contents(kept)>>"
                + "/B<</LastModified(D:2026)/CreationDate(D:2026)/ModDate(D:2026)>>/XObject<</M 2 0 R/LastModified 2 0 R>>>>",
            "(form)"
        );

        Assert.Equal(
            "<</Contents (kept)/Rect [0 0 1 1]/Subtype /Link>>",
            Written(catalog.Find("A"))
        );
        Assert.Equal("<<>>", Written(catalog.Find("B")));
        Assert.Equal(2, Assert.IsType<PdfDictionary>(catalog.Find("XObject")).Entries.Length);
    }

    [Fact]
    public static void Fonts_embedded_twice_are_merged_with_all_that_refers_to_them()
    {
        const string Program = "<</Length 7>>stream\nprogram\nendstream";
        var file = Rewritten.Of(
            HandMadePdf.Of(
                "<</Type/Catalog/A 2 0 R/B 3 0 R/P 8 0 R/Q 9 0 R>>",
                "<</Type/Font/BaseFont/ABCDEF+Sans/FontDescriptor 4 0 R>>",
                "<</Type/Font/BaseFont/GHIJKL+Sans/FontDescriptor 5 0 R>>",
                "<</Type/FontDescriptor/FontName/ABCDEF+Sans/Descent 200.5/FontFile2 6 0 R>>",
                "<</Type/FontDescriptor/FontName/GHIJKL+Sans/Descent 200.5/FontFile2 7 0 R>>",
                Program,
                Program,
                "<</Type/Page>>",
                "<</Type/Page>>"
            ),
            Bare
        );
        var document = Rewritten.Read(file);

        Assert.Equal(document.Catalog.Find("A"), document.Catalog.Find("B"));
        Assert.NotEqual(document.Catalog.Find("P"), document.Catalog.Find("Q"));
        Assert.Contains(
            document.Objects,
            found =>
                found.Value is PdfDictionary font
                && font.Find("Descent") is PdfReal { Value: -200.5 }
        );
    }

    [Fact]
    public static void Other_programs_have_other_tags_and_names_without_a_tag_stay()
    {
        var catalog = Catalog(
            "<</Type/Catalog/A<</FontName/ABCDEF+Sans/FontFile2 2 0 R>>/B<</FontName/ABCDEF+Sans/FontFile2 3 0 R>>/C<</FontName/Sans/FontFile2 3 0 R>>>>",
            "<</Length 3>>stream\none\nendstream",
            "<</Length 3>>stream\ntwo\nendstream"
        );

        Assert.NotEqual(FontName(catalog, "A"), FontName(catalog, "B"), StringComparer.Ordinal);
        Assert.Matches("^[A-Z]{6}\\+Sans$", FontName(catalog, "A"));
        Assert.Equal("Sans", FontName(catalog, "C"));
    }

    [Fact]
    public static void A_stream_is_compressed_only_where_that_makes_it_shorter()
    {
        var catalog = Catalog(
            "<</Type/Catalog/A 2 0 R/B 3 0 R>>",
            $"<</Length 900>>stream\n{new string('a', 900)}\nendstream",
            "<</Length 3>>stream\nabc\nendstream",
            out var document
        );
        var (longer, shorter) = (
            Stream(document, catalog.Find("A")),
            Stream(document, catalog.Find("B"))
        );

        Assert.Equal(new PdfName("FlateDecode"), longer.Dictionary.Find("Filter"));
        Assert.True(longer.Encoded.Length < 50);
        Assert.Null(shorter.Dictionary.Find("Filter"));
        Assert.Equal("abc"u8.ToArray(), shorter.Encoded.ToArray());
    }

    [Fact]
    public static void Predicted_streams_and_pictures_keep_what_says_how_to_read_them()
    {
        var rows = Encoding.Latin1.GetString(
            ZlibEncoder.Encode(new byte[] { 2, 1, 2, 3, 2, 1, 1, 1 })
        );
        var catalog = Catalog(
            "<</Type/Catalog/A 2 0 R/B 3 0 R>>",
            $"<</Filter[/FlateDecode]/DecodeParms[<</Predictor 12/Columns 3>>]/Length {rows.Length}>>stream\n{rows}\nendstream",
            "<</Filter/DCTDecode/Length 4>>stream\n\u00FF\u00D8\u00FF\u00D9\nendstream",
            out var document
        );
        var (predicted, picture) = (
            Stream(document, catalog.Find("A")),
            Stream(document, catalog.Find("B"))
        );

        Assert.Equal(
            [1, 2, 3, 2, 3, 4],
            Rewritten.Value(StreamDecoder.Decode(predicted, 100)).ToArray()
        );
        Assert.Equal(new PdfName("DCTDecode"), picture.Dictionary.Find("Filter"));
        Assert.Equal([0xFF, 0xD8, 0xFF, 0xD9], picture.Encoded.ToArray());
    }

    [Fact]
    public static void Numbers_do_not_matter_to_the_result()
    {
        var one = HandMadePdf.Of(
            "<</Type/Catalog/A 2 0 R/B 3 0 R>>",
            "(first)",
            "[(second) 2 0 R]"
        );
        var other = HandMadePdf.WithTrailer(
            "/Root 3 0 R",
            "[(second) 4 0 R]",
            "(unused)",
            "<</B 1 0 R/A 4 0 R/Type/Catalog>>",
            "(first)"
        );

        Assert.Equal(Rewritten.Of(one, Bare), Rewritten.Of(other, Bare));
    }

    private static string FontName(PdfDictionary catalog, string key) =>
        Assert
            .IsType<PdfName>(Assert.IsType<PdfDictionary>(catalog.Find(key)).Find("FontName"))
            .Value;

    private static PdfStream Stream(PdfDocument document, PdfObject? reference) =>
        Assert.IsType<PdfStream>(document.Resolve(reference));

    private static PdfDictionary Catalog(params string[] objects) =>
        Rewritten.Read(Rewritten.Of(HandMadePdf.Of(objects), Bare)).Catalog;

    private static PdfDictionary Catalog(
        string first,
        string second,
        string third,
        out PdfDocument document
    )
    {
        document = Rewritten.Read(Rewritten.Of(HandMadePdf.Of(first, second, third), Bare));
        return document.Catalog;
    }

    private static string Written(PdfObject? value)
    {
        var output = new System.Buffers.ArrayBufferWriter<byte>();
        SignedPdf.Writing.PdfWriter.Write(output, Assert.IsAssignableFrom<PdfObject>(value));
        return Encoding.Latin1.GetString(output.WrittenSpan);
    }
}
