using System.Text;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;
using UglyToad.PdfPig;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

[Trait("lane", "slow")]
public static class RewriteTests
{
    private static readonly byte[] Drawn = DrawnDocument.Draw();
    private static readonly byte[] Result = Rewritten.Of(Drawn);

    [Fact]
    public static void Two_drawings_of_the_same_document_give_the_same_bytes()
    {
        var again = DrawnDocument.Draw();

        Assert.NotEqual(Drawn, again);
        Assert.Equal(Result, Rewritten.Of(again));
    }

    [Fact]
    public static void Rewriting_the_result_changes_nothing() =>
        Assert.Equal(Result, Rewritten.Of(Result));

    [Fact]
    public static void Rewriting_without_options_changes_nothing_the_second_time()
    {
        var bare = new RewriteOptions("Title", null, "tool", null, null, []);
        var once = Rewritten.Of(Drawn, bare);

        Assert.Equal(once, Rewritten.Of(once, bare));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public static void Bytes_do_not_depend_on_the_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            Assert.Equal(Result, Rewritten.Of(Drawn));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public static void Another_content_has_another_identifier()
    {
        var other = Rewritten.Of(DrawnDocument.Draw(pages: 2));

        Assert.NotEqual(Identifier(Result), Identifier(other), StringComparer.Ordinal);
    }

    [Fact]
    public static void Another_title_has_another_identifier()
    {
        var other = Rewritten.Of(Drawn, Rewritten.Options with { Title = "Another" });

        Assert.NotEqual(Identifier(Result), Identifier(other), StringComparer.Ordinal);
    }

    [Fact]
    public static void Text_stays_the_same()
    {
        var before = Text(Drawn);

        Assert.Equal(3, before.Count);
        Assert.Contains("≤ 7.5 %, met ✓", before[0], StringComparison.Ordinal);
        Assert.Equal(before, Text(Result));
    }

    [Fact]
    public static void Structure_outline_and_annotations_stay()
    {
        var (before, after) = (Rewritten.Read(Drawn), Rewritten.Read(Result));
        string[] keys =
        [
            "StructTreeRoot",
            "MarkInfo",
            "Outlines",
            "Pages",
            "PageMode",
            "ViewerPreferences",
        ];

        Assert.All(keys, key => Assert.NotNull(before.Resolve(before.Catalog.Find(key))));
        Assert.All(keys, key => Assert.NotNull(after.Resolve(after.Catalog.Find(key))));
        foreach (var kind in (string[])["StructElem", "Page", "Annot", "FontDescriptor"])
        {
            Assert.True(CountOfType(before, kind) > 0, kind);
            Assert.True(CountOfType(after, kind) <= CountOfType(before, kind), kind);
        }

        Assert.Equal(CountOfType(before, "StructElem"), CountOfType(after, "StructElem"));
        Assert.Equal(CountOfType(before, "Annot"), CountOfType(after, "Annot"));
    }

    [Fact]
    public static void Streams_written_the_same_are_kept_once()
    {
        var written = Rewritten
            .Read(Result)
            .Objects.Select(static found => found.Value)
            .OfType<PdfStream>()
            .Select(static stream => Convert.ToHexString(stream.Encoded.Span))
            .Where(static content => content.Length > 200)
            .ToList();

        Assert.Equal(written.Distinct(StringComparer.Ordinal).Count(), written.Count);
    }

    [Fact]
    public static void No_date_remains_unless_given()
    {
        var bare = Rewritten.Of(Drawn, Rewritten.Options with { Date = null });
        var text = Encoding.Latin1.GetString(bare);

        Assert.Contains("(D:", Encoding.Latin1.GetString(Drawn), StringComparison.Ordinal);
        Assert.DoesNotContain("(D:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("PDFsharp", text, StringComparison.Ordinal);
        Assert.Contains(
            "(D:20260102030405-05'00)",
            Encoding.Latin1.GetString(Result),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public static void The_file_packs_its_small_objects_and_ends_with_its_marker()
    {
        var text = Encoding.Latin1.GetString(Result);

        Assert.StartsWith("%PDF-1.7\n%", text, StringComparison.Ordinal);
        Assert.EndsWith("\n%%EOF\n", text, StringComparison.Ordinal);
        Assert.Contains("/ObjStm", text, StringComparison.Ordinal);
        Assert.True(Assert.Single(Rewritten.Read(Result).Revisions).HasCrossReferenceStream);
    }

    [Fact]
    public static void A_file_with_object_streams_gives_one_with_the_same_content()
    {
        var result = Rewritten.Of(TestData.Read("object-streams.pdf"));

        Assert.Equal(Text(TestData.Read("object-streams.pdf")), Text(result));
        Assert.Equal(result, Rewritten.Of(result));
    }

    [Fact]
    public static void Two_attachments_of_one_name_throw()
    {
        var attachment = new Attachment(
            "a.txt",
            "text/plain",
            "",
            AttachmentRelationship.Unspecified,
            default
        );

        Assert.Throws<ArgumentException>(() =>
            DeterministicRewrite.Rewrite(
                Drawn,
                Rewritten.Options with
                {
                    Attachments = [attachment, attachment],
                }
            )
        );
    }

    private static List<string> Text(byte[] bytes)
    {
        using var document = UglyToad.PdfPig.PdfDocument.Open(bytes);
        return [.. document.GetPages().Select(static page => page.Text)];
    }

    private static string Identifier(byte[] bytes) =>
        Convert.ToHexString(
            Assert
                .IsType<PdfString>(
                    Assert.IsType<PdfArray>(Rewritten.Read(bytes).Trailer.Find("ID")).Items[0]
                )
                .Bytes.AsSpan()
        );

    private static IEnumerable<PdfDictionary> Dictionaries(
        SignedPdf.Reading.PdfDocument document
    ) => document.Objects.Select(static found => found.Value).OfType<PdfDictionary>();

    private static int CountOfType(SignedPdf.Reading.PdfDocument document, string type) =>
        Dictionaries(document).Count(found => found.Find("Type") == new PdfName(type));
}
