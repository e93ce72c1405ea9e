using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

public static class SignatureFieldsTests
{
    private static readonly PageRectangle Place = new(10, 20, 110.25, 60);

    [Fact]
    public static void A_field_is_an_annotation_of_its_page_and_a_part_of_the_form()
    {
        var document = Reserved(
            DrawnDocument.Draw(pages: 2),
            new ReservedField("f", 2, Place, "F")
        );
        var reference = Tampering.Field(document, "f");
        var field = (PdfDictionary)document.Find(reference)!;
        var page = document.ResolveDictionary(field.Find("P"))!;
        var form = document.ResolveDictionary(document.Catalog.Find("AcroForm"))!;

        Assert.Contains(reference, ((PdfArray)document.Resolve(page.Find("Annots"))!).Items);
        Assert.NotEqual(Tampering.Page(document), field.Find("P"));
        Assert.Equal([reference], ((PdfArray)form.Find("Fields")!).Items);
        Assert.Equal(new PdfInteger(3), form.Find("SigFlags"));
        Assert.Equal(new PdfReal("110.25"), ((PdfArray)field.Find("Rect")!).Items[2]);
        Assert.Null(field.Find("V"));
    }

    [Fact]
    public static void A_field_has_its_tag_with_text_for_those_who_cannot_see_it()
    {
        var document = Reserved(
            DrawnDocument.Draw(pages: 1),
            new ReservedField("f", 1, Place, "Sign")
        );
        var field = Tampering.Field(document, "f");
        var dictionary = (PdfDictionary)document.Find(field)!;
        var root = document.ResolveDictionary(document.Catalog.Find("StructTreeRoot"))!;
        var tree = document.ResolveDictionary(root.Find("ParentTree"))!;
        var numbers = (PdfArray)document.Resolve(tree.Find("Nums"))!;
        var element = document.ResolveDictionary(numbers.Items[^1])!;

        Assert.Equal(numbers.Items[^2], dictionary.Find("StructParent"));
        Assert.Equal(new PdfName("Form"), element.Find("S"));
        Assert.Equal("Sign", ((PdfString)element.Find("Alt")!).ToText());
        Assert.Equal(field, document.ResolveDictionary(element.Find("K"))!.Find("Obj"));
        var parent = document.ResolveDictionary(element.Find("P"))!;
        Assert.Contains(numbers.Items[^1], ((PdfArray)document.Resolve(parent.Find("K"))!).Items);
    }

    [Fact]
    public static void A_document_without_tags_gets_none()
    {
        var document = Rewritten.Read(SignedDocument.Small);

        Assert.Null(document.Catalog.Find("StructTreeRoot"));
        Assert.Null(
            ((PdfDictionary)document.Find(Tampering.Field(document, "author"))!).Find(
                "StructParent"
            )
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public static void A_page_that_is_not_there_is_refused(int page) =>
        AssertRefused(DrawnDocument.Draw(pages: 1), new ReservedField("f", page, Place, "F"));

    [Fact]
    public static void A_document_with_a_form_is_refused() =>
        AssertRefused(SignedDocument.Unsigned, new ReservedField("f", 1, Place, "F"));

    [Fact]
    public static void A_signed_document_is_refused() =>
        AssertRefused(SignedDocument.SignedOnce, new ReservedField("f", 1, Place, "F"));

    [Fact]
    public static void A_file_that_is_none_is_refused() =>
        AssertRefused("nothing"u8.ToArray(), new ReservedField("f", 1, Place, "F"));

    [Theory]
    [InlineData("")]
    [InlineData("a.b")]
    public static void A_name_that_is_none_throws(string name) =>
        Assert.Throws<ArgumentException>(() =>
            Reserve(DrawnDocument.Draw(pages: 1), new ReservedField(name, 1, Place, "F"))
        );

    [Fact]
    public static void A_name_used_twice_throws() =>
        Assert.Throws<ArgumentException>(() =>
            Reserve(
                DrawnDocument.Draw(pages: 1),
                new ReservedField("f", 1, Place, "F"),
                new ReservedField("f", 1, Place, "F")
            )
        );

    [Theory]
    [InlineData(10, 20, 10, 30)]
    [InlineData(10, 20, 30, 10)]
    [InlineData(10, double.NaN, 30, 40)]
    public static void A_rectangle_without_area_throws(
        double left,
        double bottom,
        double right,
        double top
    ) =>
        Assert.Throws<ArgumentException>(() =>
            Reserve(
                DrawnDocument.Draw(pages: 1),
                new ReservedField("f", 1, new(left, bottom, right, top), "F")
            )
        );

    private static PdfDocument Reserved(byte[] drawn, ReservedField field) =>
        Rewritten.Read(Rewritten.Value(Reserve(drawn, field)).ToArray());

    private static void AssertRefused(byte[] drawn, ReservedField field) =>
        Assert.False(Reserve(drawn, field).TryGet(out _, out _));

    private static PdfResult<ReadOnlyMemory<byte>> Reserve(
        byte[] drawn,
        params ReservedField[] fields
    ) => DeterministicRewrite.Rewrite(drawn, Rewritten.Options with { Fields = [.. fields] });
}
