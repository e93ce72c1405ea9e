using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Tests.Fonts;

public class PrintableTextTests
{
    [Theory]
    [InlineData("plain text 1.5", "plain text 1.5")]
    [InlineData("検体 7", "□□ 7")]
    [InlineData("🩸", "□")]
    [InlineData("Cafe\u0301", "Café")]
    [InlineData("a\tb", "a b")]
    [InlineData("a\u0007b\u202Ec", "a□b□c")]
    [InlineData("a\r\nb", "a\nb")]
    [InlineData("−5 ≤ x̄", "−5 ≤ x□")]
    public void Characters_that_the_fonts_lack_become_visible_boxes(string text, string printed) =>
        Assert.Equal(printed, PrintableText.For(ReportFonts.Regular, text));

    [Fact]
    public void Half_a_surrogate_pair_becomes_a_box() =>
        Assert.Equal("a□b", PrintableText.For(ReportFonts.Regular, "a\uD800b"));

    [Fact]
    public void Every_font_has_the_letters_digits_and_signs_that_reports_use()
    {
        const string wanted =
            "AZaz09 ÄÖÜßéèñçøåŁłŞşİıŐő αβμσΔΣΩ ±×÷−≤≥≈≠√∞ ²³⁻¹₀₁₂ ←↑→↓↔ ‐–—‘’“”„…•·§†‡°‰ ✓✗□■○●△▲◇◆\u00A0\u2007\u2009\u202F";
        Assert.All(
            new[]
            {
                ReportFonts.Regular,
                ReportFonts.Semibold,
                ReportFonts.Italic,
                ReportFonts.Fixed,
            },
            face => Assert.Equal(wanted, PrintableText.For(face, wanted))
        );
    }

    [Fact]
    public void Digits_and_minus_have_one_width_so_that_numbers_align()
    {
        foreach (
            var face in new[] { ReportFonts.Regular, ReportFonts.Semibold, ReportFonts.Italic }
        )
        {
            Assert.Single("0123456789".Select(c => face.Width(c.ToString(), 10)).Distinct());
        }

        Assert.Equal(ReportFonts.Regular.Width("+", 10), ReportFonts.Regular.Width("−", 10));
    }
}
