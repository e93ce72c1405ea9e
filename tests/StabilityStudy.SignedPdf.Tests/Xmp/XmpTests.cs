using System.Text;
using System.Xml.Linq;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Xmp;

public static class XmpTests
{
    private static readonly XNamespace Dc = "http://purl.org/dc/elements/1.1/";
    private static readonly XNamespace Xmp = "http://ns.adobe.com/xap/1.0/";
    private static readonly XNamespace Mm = "http://ns.adobe.com/xap/1.0/mm/";

    [Theory]
    [InlineData("Stability of <aPTT> & \"PT\" ]]>")]
    [InlineData("Einschätzung ≤ 7.5 % 🧪")]
    [InlineData("two\nlines\tand a tab")]
    [InlineData("")]
    public static void Any_title_comes_back_from_the_metadata(string title) =>
        Assert.Equal(title, Metadata(title).Descendants(Dc + "title").Single().Value);

    [Fact]
    public static void Characters_that_no_metadata_can_hold_are_replaced() =>
        Assert.Equal(
            "a\uFFFDb\uFFFDc\uFFFD",
            Metadata("a\u0001b\uD800c\uFFFE").Descendants(Dc + "title").Single().Value
        );

    [Fact]
    public static void Title_author_tool_language_and_date_are_as_given()
    {
        var metadata = Metadata("Title");

        Assert.Equal("Trial laboratory", metadata.Descendants(Dc + "creator").Single().Value);
        Assert.Equal("en-US", metadata.Descendants(Dc + "language").Single().Value);
        Assert.Equal("trial 1.0", metadata.Descendants(Xmp + "CreatorTool").Single().Value);
        Assert.Equal(
            "2026-01-02T03:04:05-05:00",
            metadata.Descendants(Xmp + "CreateDate").Single().Value
        );
        Assert.Matches(
            "^uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab]",
            metadata.Descendants(Mm + "DocumentID").Single().Value
        );
    }

    [Fact]
    public static void No_conformance_is_claimed_unless_asked_for() =>
        Assert.DoesNotContain(
            Metadata("Title").Descendants(),
            static element =>
                element.Name.NamespaceName.Contains("pdfa", StringComparison.OrdinalIgnoreCase)
                || element.Name.NamespaceName.Contains("pdfua", StringComparison.OrdinalIgnoreCase)
        );

    [Fact]
    public static void A_claim_names_both_standards_and_describes_what_PDF_A_does_not_know()
    {
        XNamespace pdfa = "http://www.aiim.org/pdfa/ns/id/";
        XNamespace pdfua = "http://www.aiim.org/pdfua/ns/id/";
        XNamespace schema = "http://www.aiim.org/pdfa/ns/schema#";
        XNamespace property = "http://www.aiim.org/pdfa/ns/property#";

        var metadata = Metadata("Title", claims: true);

        Assert.Equal("3", metadata.Descendants(pdfa + "part").Single().Value);
        Assert.Equal("A", metadata.Descendants(pdfa + "conformance").Single().Value);
        Assert.Equal("1", metadata.Descendants(pdfua + "part").Single().Value);
        Assert.Equal(
            pdfua.NamespaceName,
            metadata.Descendants(schema + "namespaceURI").Single().Value
        );
        Assert.Equal("pdfuaid", metadata.Descendants(schema + "prefix").Single().Value);
        Assert.Equal("part", metadata.Descendants(property + "name").Single().Value);

        // Every property is of a schema that PDF/A predefines (ISO 19005-3:2012, 6.6.2.3.1) or of the one described.
        XNamespace[] known =
        [
            Dc,
            Xmp,
            Mm,
            pdfa,
            pdfua,
            schema,
            property,
            "http://ns.adobe.com/pdf/1.3/",
            "http://www.aiim.org/pdfa/ns/extension/",
            "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
            "adobe:ns:meta/",
        ];
        Assert.All(
            metadata.Descendants(),
            element => Assert.Contains(element.Name.Namespace, known)
        );
    }

    private static XDocument Metadata(string title, bool claims = false)
    {
        var drawn = HandMadePdf.Of("<</Type/Catalog>>");
        var document = Rewritten.Read(
            Rewritten.Of(drawn, Rewritten.Options with { Title = title, ClaimsArchive = claims })
        );
        var stream = Assert.IsType<PdfStream>(document.Resolve(document.Catalog.Find("Metadata")));
        Assert.Null(stream.Dictionary.Find("Filter"));
        return XDocument.Parse(
            Encoding.UTF8.GetString(stream.Encoded.Span),
            LoadOptions.PreserveWhitespace
        );
    }
}
