using System.Collections.Concurrent;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Text;
using UglyToad.PdfPig;

namespace StabilityStudy.Reporting.Tests.Pdf;

public class OddReportTests
{
    private const double PointsPerMillimeter = 72 / 25.4;

    private static readonly ConcurrentDictionary<string, DrawnReport> Drawings = new(
        StringComparer.Ordinal
    );

    public static TheoryData<string> Names => OddReports.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_letter_lies_within_the_margins(string name)
    {
        using var document = Open(name);

        foreach (var page in document.GetPages())
        {
            Assert.All(
                page.Letters,
                letter =>
                {
                    var across = new[] { letter.StartBaseLine.X, letter.EndBaseLine.X };
                    var up = new[] { letter.StartBaseLine.Y, letter.EndBaseLine.Y };
                    Assert.InRange(across.Min(), 16.9 * PointsPerMillimeter, page.Width);
                    Assert.InRange(
                        across.Max(),
                        0,
                        page.Width - (16.9 * PointsPerMillimeter) + Space(letter.Value)
                    );
                    Assert.InRange(up.Min(), 7.9 * PointsPerMillimeter, page.Height);
                    Assert.InRange(up.Max(), 0, page.Height - (10.4 * PointsPerMillimeter));
                }
            );
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_letter_is_drawn_over_another(string name)
    {
        using var document = Open(name);

        Assert.Equal("", string.Join('\n', document.GetPages().SelectMany(PdfReading.Overlaps)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Pages_are_numbered_and_show_every_text_of_the_model(string name)
    {
        var model = OddReports.All[name];
        using var document = Open(name);
        var body = PdfReading.Body(
            document,
            model.Header.Left,
            model.Header.Right,
            model.Header.Fingerprint
        );
        foreach (var table in model.Sections.SelectMany(s => s.Blocks).OfType<Table>())
        {
            var repeated =
                table.Caption + "(continued)" + string.Concat(table.Columns.Select(c => c.Header));
            body = body.Replace(Printed(repeated), "", StringComparison.Ordinal);
        }

        Assert.Equal(Drawn(name).PageCount, document.NumberOfPages);
        Assert.All(
            ModelTexts.OnPages(model),
            text => Assert.Contains(Printed(text), body, StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Figures_in_the_tag_tree_have_the_alternative_texts_of_the_model(string name)
    {
        var wanted = OddReports.All[name].Sections.SelectMany(s => s.Blocks).SelectMany(Figures);
        using var document = Open(name);

        var figures = PdfReading
            .Structure(document)
            .WithDescendants()
            .Where(e => e.Type is "Figure");

        Assert.Equal(wanted.ToArray(), figures.Select(f => f.AlternativeText ?? "").ToArray());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Letters_come_from_the_fonts_of_the_program_only(string name)
    {
        using var document = Open(name);

        var fonts = document
            .GetPages()
            .SelectMany(p => p.Letters)
            .Select(l => l.FontName ?? "")
            .Distinct(StringComparer.Ordinal);

        Assert.All(fonts, font => Assert.Matches("^[A-Z]{6}\\+Report ?(Sans|Mono)", font));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Plain_text_shows_every_text_of_the_model_within_its_width(string name)
    {
        var model = OddReports.All[name];

        foreach (var width in new[] { 40, 80, 132 })
        {
            var text = TextDrawing.Draw(model, width);

            Assert.All(
                text.Split('\n'),
                line =>
                    Assert.InRange(
                        new System.Globalization.StringInfo(line).LengthInTextElements,
                        0,
                        width
                    )
            );
            if (width == 132)
            {
                var words = string.Concat(
                    text.Split([' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries)
                );
                Assert.All(
                    Words(model),
                    word => Assert.Contains(word, words, StringComparison.Ordinal)
                );
            }
        }
    }

    private static IEnumerable<string> Words(ReportModel model) =>
        ModelTexts
            .InPlainText(model)
            .Where(t => t.All(c => c is >= ' ' and < '\u0250' or '−' or '≤'))
            .SelectMany(t => t.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
            .Where(w => w.Length <= 20);

    private static IEnumerable<string> Figures(Block block) =>
        block switch
        {
            ChartBlock chart => [chart.AlternativeText],
            Floating floating => [floating.Figure.AlternativeText],
            FlowFigure flow => [flow.AlternativeText],
            ChartRow row => row.Charts.Select(chart => chart.AlternativeText),
            KeepTogether group => group.Blocks.SelectMany(Figures),
            _ => [],
        };

    private static string Printed(string text) =>
        PdfReading.WithoutSpaces(PrintableText.For(ReportFonts.Regular, text));

    private static double Space(string letter) => string.IsNullOrWhiteSpace(letter) ? 6 : 0.1;

    private static DrawnReport Drawn(string name) =>
        Drawings.GetOrAdd(
            name,
            n => KeptDrawings.Keep(PdfDrawing.Draw(OddReports.All[n]), "odd-" + n.Replace(' ', '-'))
        );

    private static PdfDocument Open(string name) => PdfDocument.Open(Drawn(name).Pdf.ToArray());
}
