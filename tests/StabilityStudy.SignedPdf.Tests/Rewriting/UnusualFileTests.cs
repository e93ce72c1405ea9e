using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

/// <summary>Rewriting of files that no drawing gives.</summary>
public static class UnusualFileTests
{
    [Fact]
    public static void A_signed_file_is_refused()
    {
        var signed = HandMadePdf.Of(
            "<</Type/Catalog/X 2 0 R>>",
            "<</Type/Sig/ByteRange[0 1 2 3]/Contents<00>>>"
        );

        Assert.False(
            DeterministicRewrite.Rewrite(signed, Rewritten.Options).TryGet(out _, out var failure)
        );
        Assert.Contains("signature", failure.What, StringComparison.Ordinal);
    }

    [Fact]
    public static void A_damaged_stream_is_a_failure()
    {
        var damaged = HandMadePdf.Of(
            "<</Type/Catalog/X 2 0 R>>",
            "<</Filter/FlateDecode/Length 4>>\nstream\nABCD\nendstream"
        );

        Assert.False(DeterministicRewrite.Rewrite(damaged, Rewritten.Options).TryGet(out _, out _));
    }

    [Fact]
    public static void What_the_trailer_does_not_reach_is_dropped()
    {
        var result = Rewritten.Of(HandMadePdf.Of("<</Type/Catalog>>", "(nobody refers to this)"));

        Assert.DoesNotContain(
            "nobody",
            Encoding.Latin1.GetString(result),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public static void References_in_a_circle_and_to_nothing_become_null()
    {
        var result = Rewritten.Of(
            HandMadePdf.Of(
                "<</Type/Catalog/A 2 0 R/B[9 0 R 4 0 R 1 5 R]>>",
                "3 0 R",
                "2 0 R",
                "5 0 R",
                "(found)"
            )
        );
        var catalog = Rewritten.Read(result).Catalog;

        Assert.Null(catalog.Find("A"));
        var items = Assert.IsType<PdfArray>(catalog.Find("B")).Items;
        Assert.Equal(
            [typeof(PdfNull), typeof(PdfReference), typeof(PdfNull)],
            items.Select(static item => item.GetType())
        );
    }
}
