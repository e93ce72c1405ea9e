using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

public static class FontRewriteTests
{
    private static readonly byte[] Result = Rewritten.Of(DrawnDocument.Draw());

    [Fact]
    public static void Font_tags_follow_from_the_program_and_agree_between_font_and_descriptor()
    {
        var document = Rewritten.Read(Result);
        var fonts = Dictionaries(document)
            .Where(static font => font.Find("DescendantFonts") is not null)
            .ToList();

        Assert.NotEmpty(fonts);
        foreach (var font in fonts)
        {
            var descendants = Assert.IsType<PdfArray>(
                document.Resolve(font.Find("DescendantFonts"))
            );
            var descendant = document.ResolveDictionary(descendants.Items[0]);
            var descriptor = document.ResolveDictionary(descendant?.Find("FontDescriptor"));
            var name = Assert.IsType<PdfName>(font.Find("BaseFont"));
            Assert.Matches("^[A-Z]{6}\\+DejaVu", name.Value);
            Assert.Equal(name, descendant?.Find("BaseFont"));
            Assert.Equal(name, descriptor?.Find("FontName"));
        }
    }

    [Fact]
    public static void Descents_are_negative() =>
        Assert.All(
            Dictionaries(Rewritten.Read(Result))
                .Where(static found => found.Find("FontName") is not null),
            static descriptor =>
                Assert.True(
                    descriptor.Find("Descent")
                        is PdfInteger { Value: < 0 }
                            or PdfReal { Value: < 0 },
                    descriptor.Find("Descent")?.ToString()
                )
        );

    private static IEnumerable<PdfDictionary> Dictionaries(PdfDocument document) =>
        document.Objects.Select(static found => found.Value).OfType<PdfDictionary>();
}
