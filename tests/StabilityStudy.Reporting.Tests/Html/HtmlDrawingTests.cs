using System.Collections.Concurrent;
using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StabilityStudy.Reporting.Html;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Tests.Pdf;
using StabilityStudy.Reporting.Tests.Report;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Html;

[Trait("lane", "slow")]
public sealed partial class HtmlDrawingTests
{
    private static readonly ConcurrentDictionary<
        string,
        Lazy<(ReportModel Model, string Html)>
    > s_pages = new(StringComparer.Ordinal);

    public static TheoryData<string> Reports => [.. OddReports.All.Keys];

    public static TheoryData<string> Studies => OddStudies.Names;

    [Theory]
    [MemberData(nameof(Reports))]
    public void Every_text_of_an_odd_report_stands_in_the_page(string name) =>
        RequireWhole(OddReports.All[name], HtmlDrawing.Draw(OddReports.All[name]));

    [Theory]
    [MemberData(nameof(Studies))]
    public void Every_text_of_an_odd_study_stands_in_the_page(string name)
    {
        var (model, html) = Page(name);
        RequireWhole(model, html);
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void The_page_needs_nothing_else_and_every_identifier_is_one(string name)
    {
        var html = Page(name).Html;
        var identifiers = Identifier()
            .Matches(html)
            .Select(match => match.Groups["id"].Value)
            .ToArray();
        var references = Reference()
            .Matches(html)
            .Select(match => match.Groups["id"].Value)
            .Distinct(StringComparer.Ordinal);
        var known = identifiers.ToHashSet(StringComparer.Ordinal);

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("://", Styleless(html), StringComparison.Ordinal);
        Assert.Equal(identifiers.Length, known.Count);
        Assert.All(references, reference => Assert.Contains(reference, known));
        Assert.Equal(html, HtmlDrawing.Draw(OfStudy(name)));
    }

    /// <summary>WCAG 2.2, success criterion 1.4.3: at least 4.5 for text, 1.4.11: at least 3 for marks.</summary>
    [Theory]
    [InlineData("#1a1c20", 4.5)]
    [InlineData("#1d4466", 4.5)]
    [InlineData("#4a4f57", 4.5)]
    [InlineData("#8a939e", 3)]
    public void Colors_stand_out_from_the_paper(string color, double least)
    {
        Assert.Contains(color, HtmlStyle.Sheet, StringComparison.Ordinal);
        Assert.True(Contrast.WithPaper(color) >= least);
    }

    /// <summary>The narrowest window is that of a phone, 390 pixels wide; a rem is 16 of them.</summary>
    [Fact]
    public void Nothing_has_a_width_that_a_phone_cannot_show()
    {
        var rules = HtmlStyle.Sheet[HtmlStyle.Sheet.IndexOf(":root", StringComparison.Ordinal)..];
        var widths = FixedWidth().Matches(rules);

        Assert.NotEmpty(widths);
        Assert.All(
            widths,
            width =>
                Assert.InRange(
                    double.Parse(width.Groups["size"].Value, CultureInfo.InvariantCulture)
                        * (width.Groups["unit"].Value == "rem" ? 16 : 1),
                    0,
                    390
                )
        );
        Assert.DoesNotContain(
            " style=\"",
            Styleless(Page("40 pairs").Html),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("7")]
    [InlineData("N-7")]
    [InlineData("N 7/\"é\"")]
    public void Specimen_is_a_link_only_where_it_is_surely_meant(string code)
    {
        var results = new Table(
            "Results",
            [new Column("Specimen", ColumnAlignment.Left, 1)],
            [
                new Row([new TableCell(code)])
                {
                    ResultsOf = new SpecimenResults(code, "PT", "PT · All"),
                },
            ],
            null
        );
        var named = new Table(
            "Named",
            [new Column("Specimen", ColumnAlignment.Left, 1) { IsOfSpecimens = true }],
            [new Row([new TableCell(code)]), new Row([new TableCell("unknown")])],
            null
        );
        var said = new Paragraph($"At 7 h {code}, not {code}-B.", ParagraphStyle.Body);

        var html = HtmlDrawing.Draw(OddReports.Report(OddReports.Section(said, named, results)));

        var id = Identifier()
            .Matches(html)
            .Select(match => match.Groups["id"].Value)
            .Single(found => found.StartsWith("specimen-", StringComparison.Ordinal));
        Assert.Equal(code == "N-7" ? 2 : 1, html.Split($"<a href=\"#{id}\">").Length - 1);
        Assert.Contains("<th scope=\"row\">unknown</th>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_figure_is_a_file_with_its_words_and_fonts()
    {
        var model = OfStudy("40 pairs");
        var files = FigureFiles.Of(model);
        var words = model
            .Sections.SelectMany(section => section.Blocks)
            .SelectMany(Words)
            .ToArray();

        Assert.NotEmpty(files);
        Assert.Equal(words.Length, files.Length);
        Assert.Equal(files.Length, files.DistinctBy(file => file.Name).Count());
        foreach (var (file, text) in files.Zip(words))
        {
            Assert.Matches("^[0-9]{2,}-[a-z0-9-]+[.]svg$", file.Name);
            using var stream = new MemoryStream(file.Svg.ToArray());
            var svg = XDocument.Load(stream).Root!;
            Assert.Equal(text, svg.Attribute("aria-label")!.Value);
            Assert.Contains("@font-face", svg.Elements().First().Value, StringComparison.Ordinal);
            // Nothing is filled black by default: every mark names its filling or its line.
            Assert.All(
                svg.Descendants()
                    .Where(mark =>
                        mark.Name.LocalName is "rect" or "path"
                        && mark.Parent!.Name.LocalName != "clipPath"
                    ),
                mark =>
                    Assert.True(
                        mark.Attribute("fill") is not null || mark.Attribute("stroke") is not null
                    )
            );
        }
    }

    private static IEnumerable<string> Words(Block block) =>
        block switch
        {
            ChartBlock chart => [chart.AlternativeText],
            Floating floating => [floating.Figure.AlternativeText],
            ChartRow row => row.Charts.Select(chart => chart.AlternativeText),
            KeepTogether kept => kept.Blocks.SelectMany(Words),
            _ => [],
        };

    private static (ReportModel Model, string Html) Page(string name) =>
        s_pages
            .GetOrAdd(
                name,
                key =>
                    new(() =>
                    {
                        var model = OfStudy(key);
                        return (model, HtmlDrawing.Draw(model));
                    })
            )
            .Value;

    private static ReportModel OfStudy(string name) =>
        ReportBuilder.Build(OddStudies.All[name], PaperSize.A4, SectionPages.None);

    private static void RequireWhole(ReportModel model, string html)
    {
        var page = PdfReading.WithoutSpaces(WebUtility.HtmlDecode(Tag().Replace(html, Spoken)));
        Assert.All(
            ModelTexts.InPlainText(model),
            text =>
                Assert.Contains(
                    PdfReading.WithoutSpaces(Shown(text)),
                    page,
                    StringComparison.Ordinal
                )
        );

        // Alternative texts are printed as the figures' fonts can; all else as it is.
        static string Shown(string text) => TextLines.Visible(text);
    }

    /// <summary>What is left of a tag: the words that a reader hears of it.</summary>
    private static string Spoken(Match tag)
    {
        var label = Label().Match(tag.Value);
        return label.Success ? label.Groups["words"].Value : "";
    }

    private static string Styleless(string html)
    {
        var end = html.IndexOf("</style>", StringComparison.Ordinal);
        return html[end..];
    }

    [GeneratedRegex(
        "(?:[ {;]|[^x]-)width: (?<size>[0-9.]+)(?<unit>px|rem)|minmax\\((?<size>[0-9.]+)(?<unit>px|rem)|grid-template-columns: (?<size>[0-9.]+)(?<unit>px|rem)",
        RegexOptions.NonBacktracking
    )]
    private static partial Regex FixedWidth();

    [GeneratedRegex("<[^>]*>", RegexOptions.NonBacktracking)]
    private static partial Regex Tag();

    [GeneratedRegex("aria-label=\"(?<words>[^\"]*)\"", RegexOptions.NonBacktracking)]
    private static partial Regex Label();

    [GeneratedRegex(" id=\"(?<id>[^\"]*)\"", RegexOptions.NonBacktracking)]
    private static partial Regex Identifier();

    [GeneratedRegex("(?:url\\(#|href=\"#)(?<id>[^\")]*)", RegexOptions.NonBacktracking)]
    private static partial Regex Reference();
}
