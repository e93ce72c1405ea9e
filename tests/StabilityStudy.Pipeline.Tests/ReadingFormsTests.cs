using System.Net;
using System.Text.RegularExpressions;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>The reports of the examples as text and as HTML.</summary>
[Trait("lane", "slow")]
public sealed partial class ReadingFormsTests
{
    private const int Width = 80;

    /// <summary>What can be read in a terminal without losing the thread.</summary>
    private const int MostLines = 400;

    public static TheoryData<string> Examples =>
        [
            "small-paired-sheet",
            "aptt-room-temperature",
            "frozen-plasma",
            "routine-room-temperature",
        ];

    [Fact]
    public void The_text_of_the_small_example_is_short()
    {
        var lines = StudyPipeline.RenderText(Of("small-paired-sheet"), Width, full: false);

        Assert.InRange(lines.Count(letter => letter == '\n'), 100, MostLines);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void No_word_of_a_table_is_broken_in_the_text(string example)
    {
        var study = Of(example);
        foreach (var full in new[] { false, true })
        {
            var model = ReportBuilder.Build(
                study.Analysis,
                PaperSize.A4,
                SectionPages.None,
                full: full
            );
            var text = StudyPipeline.RenderText(study, Width, full);
            var written = Counts(text.Split('\n').SelectMany(Words));
            var wanted = Counts(
                (full ? model : BriefReport.Of(model))
                    .Sections.SelectMany(section => section.Blocks)
                    .SelectMany(Tables)
                    .SelectMany(table => table.Rows)
                    .SelectMany(row => row.Cells)
                    .SelectMany(cell => Words(cell.Text))
            );

            Assert.NotEmpty(wanted);
            Assert.All(
                wanted,
                word => Assert.True(written.GetValueOrDefault(word.Key) >= word.Value, word.Key)
            );
            Assert.All(text.Split('\n'), line => Assert.True(line.Length <= Width, line));
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_text_is_what_is_read_at_once_and_ends_with_what_is_left_out(string example)
    {
        var study = Of(example);
        var brief = StudyPipeline.RenderText(study, Width, full: false);
        var whole = StudyPipeline.RenderText(study, Width, full: true);
        var sections = ReportBuilder
            .Build(study.Analysis, PaperSize.A4, SectionPages.None)
            .Sections;

        Assert.EndsWith("\n" + BriefReport.Whole + "\n", brief, StringComparison.Ordinal);
        Assert.Contains(sections, section => section.IsInBrief);
        Assert.Contains(sections, section => !section.IsInBrief);
        Assert.All(
            sections,
            section =>
            {
                Assert.Equal(section.IsInBrief, brief.Contains(Head(section), Comparison));
                Assert.Equal(
                    !section.IsInBrief,
                    brief.Contains($"\n- {section.Title}\n", Comparison)
                );
                Assert.Contains(Head(section), whole, Comparison);
            }
        );
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_decision_comes_before_the_contents(string example)
    {
        var html = StudyPipeline.RenderHtml(Of(example));
        int[] places =
        [
            html.IndexOf("<h2 id=\"section-1\">Decision</h2>", Comparison),
            html.IndexOf("class=\"decisions\"", Comparison),
            html.IndexOf("<h2 id=\"contents\">", Comparison),
            html.IndexOf("<h2 id=\"section-2\">", Comparison),
        ];

        Assert.All(places, place => Assert.True(place > 0));
        Assert.Equal(places.Order(), places);
    }

    /// <summary>Each link leads to a row that begins with the code it names, and no code is left without one where it stands by itself.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void Each_specimen_that_is_named_leads_to_its_row(string example)
    {
        var study = Of(example);
        var html = StudyPipeline.RenderHtml(study);
        var rows = ResultRow()
            .Matches(html)
            .ToDictionary(row => row.Groups["id"].Value, row => row.Groups["code"].Value);
        var links = SpecimenLink().Matches(html);
        var codes = study
            .Analysis.Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Select(pair => pair.Specimen)
            .Distinct()
            .ToArray();

        Assert.NotEmpty(links);
        Assert.All(
            links.Where(link => codes.Contains(link.Groups["text"].Value)),
            link => Assert.Equal(link.Groups["text"].Value, rows[link.Groups["id"].Value])
        );
        Assert.All(links, link => Assert.Contains(link.Groups["id"].Value, rows.Keys));
        Assert.Equal(codes.Order(), rows.Values.Distinct().Order());

        var results = html.IndexOf($">{PairSection.Title}</h2>", Comparison);
        var unlinked = WebUtility.HtmlDecode(
            Tag().Replace(LinkOrDrawing().Replace(html[..results], " "), " ")
        );
        Assert.All(
            codes,
            code =>
                Assert.False(
                    Regex.IsMatch(
                        unlinked,
                        $@"(?<![\w-]){Regex.Escape(code)}(?![\w-])",
                        RegexOptions.CultureInvariant,
                        TimeSpan.FromMinutes(1)
                    ),
                    code
                )
        );
    }

    private const StringComparison Comparison = StringComparison.Ordinal;

    private static string Head(Section section) => $"\n{section.Title}\n{new string('-', Width)}\n";

    private static IEnumerable<Table> Tables(Block block) =>
        block switch
        {
            Table table => [table],
            KeepTogether kept => kept.Blocks.SelectMany(Tables),
            _ => [],
        };

    private static string[] Words(string text) =>
        text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);

    private static Dictionary<string, int> Counts(IEnumerable<string> words) =>
        words
            .GroupBy(word => word, StringComparer.Ordinal)
            .ToDictionary(word => word.Key, word => word.Count(), StringComparer.Ordinal);

    private static AnalyzedStudy Of(string example) =>
        s_studies
            .GetOrAdd(example, name => new(() => ExampleStudy.Analyze(ExampleStudy.OfFolder(name))))
            .Value;

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<
        string,
        Lazy<AnalyzedStudy>
    > s_studies = new(StringComparer.Ordinal);

    [GeneratedRegex(
        "<tr id=\"(?<id>[^\"]*)\"><th scope=\"row\">(?:<span[^>]*>)?(?<code>[^<]*)<",
        RegexOptions.NonBacktracking
    )]
    private static partial Regex ResultRow();

    [GeneratedRegex(
        "<a href=\"#(?<id>specimen-[^\"]*)\">(?<text>[^<]*)</a>",
        RegexOptions.NonBacktracking
    )]
    private static partial Regex SpecimenLink();

    /// <summary>Links, and drawings with their words: these are one image each, and their links stand below.</summary>
    [GeneratedRegex(
        "<a .*?</a>|<svg .*?</svg>|<style>.*?</style>",
        RegexOptions.Singleline | RegexOptions.NonBacktracking
    )]
    private static partial Regex LinkOrDrawing();

    [GeneratedRegex("<[^>]*>", RegexOptions.NonBacktracking)]
    private static partial Regex Tag();
}
