using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Tests.Model;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Pdf;

public partial class SameContentTests
{
    [Fact]
    public void Equal_models_give_equal_files_but_for_identifiers_and_dates()
    {
        var first = PdfDrawing.Draw(DemoReport.Create());
        var second = PdfDrawing.Draw(DemoReport.Create());

        Assert.Equal(Masked(first), Masked(second));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Culture_does_not_matter(string culture)
    {
        var wantedPdf = Masked(PdfDrawing.Draw(DemoReport.Create()));
        var wantedText = TextDrawing.Draw(DemoReport.Create());
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);

            Assert.Equal(wantedPdf, Masked(PdfDrawing.Draw(DemoReport.Create())));
            Assert.Equal(wantedText, TextDrawing.Draw(DemoReport.Create()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Another_text_gives_another_file()
    {
        var other = DemoReport.Create() with
        {
            Title = "Stability of citrated whole blood at 2 °C",
        };

        Assert.NotEqual(
            Masked(PdfDrawing.Draw(DemoReport.Create())),
            Masked(PdfDrawing.Draw(other)),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public async Task Drawings_at_the_same_time_do_not_disturb_each_other()
    {
        var wanted = Masked(PdfDrawing.Draw(DemoReport.Create()));

        string[] drawings = await Task.WhenAll(
            Enumerable
                .Range(0, 3)
                .Select(_ => Task.Run(() => Masked(PdfDrawing.Draw(DemoReport.Create()))))
        );

        Assert.All(drawings, d => Assert.Equal(wanted, d, StringComparer.Ordinal));
    }

    /// <summary>The file with PDFsharp's random identifiers, font tags and dates blanked out, as a digest.</summary>
    private static string Masked(DrawnReport drawn)
    {
        var text = Encoding.Latin1.GetString(drawn.Pdf.Span);
        text = FontTag().Replace(text, "/AAAAAA+");
        text = Identifiers().Replace(text, "/ID");
        text = Dates().Replace(text, "date");
        text = Uuids().Replace(text, "uuid");
        return Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(text)));
    }

    [GeneratedRegex(@"/[A-Z]{6}\+", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex FontTag();

    [GeneratedRegex(@"/ID\s*\[[^\]]*\]", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Identifiers();

    [GeneratedRegex(
        @"D:\d{14}[^)]*|\d{4}-\d\d-\d\dT[0-9:.+Z-]*",
        RegexOptions.None,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Dates();

    [GeneratedRegex(
        "[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}",
        RegexOptions.None,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Uuids();
}
