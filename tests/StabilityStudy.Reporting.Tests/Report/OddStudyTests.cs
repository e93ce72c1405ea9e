using System.Collections.Concurrent;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Tests.Pdf;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Report;

[Trait("lane", "slow")]
public sealed class OddStudyTests
{
    private static readonly ConcurrentDictionary<
        (string Name, PaperSize Paper),
        Lazy<DrawnStudy>
    > s_drawings = new();

    public static TheoryData<string> Names => OddStudies.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_1_states_every_conclusion_of_the_study_on_either_paper(string name)
    {
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var drawn = Draw(name, paper);
            var page = drawn.Pages[0];
            var table = drawn.Model.Sections[0].Blocks.OfType<DecisionTable>().Single();

            Assert.Equal(
                Core.Analysis.ConcludedWindow.Of(OddStudies.All[name]).Length,
                table.Rows.Length
            );
            Assert.All(
                table.Rows,
                row =>
                    Assert.True(
                        IsOn(row.Name)
                            && IsOn(row.Conclusion)
                            && row.Evidence.All(line => IsOn(line.Change))
                            || IsOn(row.Brief)
                            || IsOn(row.Code),
                        row.Brief
                    )
            );

            bool IsOn(string text) => page.Contains(Printed(text), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_signatory_has_one_box_below_the_conclusions(string name)
    {
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var places = Draw(name, paper).Signatures;

            Assert.Equal(["Author", "Approver"], places.Select(place => place.Role));
            Assert.All(places, place => Assert.Equal(1, place.Page));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_word_on_the_pages_comes_from_the_model(string name)
    {
        var drawn = Draw(name, PaperSize.A4);
        var texts = drawn
            .Texts.Append(drawn.Model.Title)
            .Concat(ModelTexts.OfLayout)
            .Select(Printed)
            .Where(text => text.Length > 0)
            .ToHashSet(StringComparer.Ordinal);

        Assert.Equal("", Unexplained(drawn.Body, texts));
    }

    /// <summary>Where a page stops to be one text of the model after another; signs such as bullets and boxes may stand between them.</summary>
    private static string Unexplained(string page, HashSet<string> texts)
    {
        var lengths = texts.Select(text => text.Length).Distinct().ToArray();
        var known = texts.GetAlternateLookup<ReadOnlySpan<char>>();
        var reached = new bool[page.Length + 1];
        reached[0] = true;
        var furthest = 0;
        for (var i = 0; i < page.Length; i++)
        {
            if (!reached[i])
            {
                continue;
            }

            furthest = i;
            reached[i + 1] |= !char.IsLetterOrDigit(page[i]);
            foreach (var length in lengths)
            {
                if (i + length <= page.Length && known.Contains(page.AsSpan(i, length)))
                {
                    reached[i + length] = true;
                }
            }
        }

        return reached[^1] ? "" : page[furthest..Math.Min(furthest + 40, page.Length)];
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_text_of_the_model_is_on_the_pages(string name)
    {
        var drawn = Draw(name, PaperSize.A4);

        Assert.Equal(
            [],
            ModelTexts
                .OnPages(drawn.Model)
                .Select(Printed)
                .Where(text => !drawn.Body.Contains(text, StringComparison.Ordinal))
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_letter_is_drawn_over_another(string name)
    {
        Assert.Equal("", Draw(name, PaperSize.A4).Overlaps);
        Assert.Equal("", Draw(name, PaperSize.Letter).Overlaps);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Summary_and_headline_state_the_same_conclusions(string name)
    {
        var analysis = OddStudies.All[name];
        var rows = FirstPageParts.Decisions(analysis).Rows;
        var summary = ReportBuilder.BuildSummary(analysis);
        var headline = ReportBuilder.BuildHeadline(analysis);

        Assert.Equal(
            rows.Select(row => row.Conclusion),
            summary
                .Sections[0]
                .Blocks.OfType<DecisionTable>()
                .Single()
                .Rows.Select(row => row.Conclusion)
        );
        Assert.Equal(
            FirstPage.Conclusions(analysis, withFigures: true).Lines.AsEnumerable(),
            headline.Sections[0].Blocks.OfType<VerdictBlock>().Single().Lines
        );
        Assert.All(
            new[] { summary, headline }.SelectMany(shorter =>
                TextDrawing.Draw(shorter, 80).Split('\n')
            ),
            line => Assert.True(line.Length <= 80, line)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_figure_that_is_missing_is_said_in_a_whole_sentence(string name)
    {
        Assert.All(
            Draw(name, PaperSize.A4).Texts,
            text =>
            {
                Assert.DoesNotContain("..", text, StringComparison.Ordinal);
                Assert.DoesNotContain(".;", text, StringComparison.Ordinal);
                Assert.DoesNotContain("not computable %", text, StringComparison.Ordinal);
                Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
                Assert.DoesNotContain("∞", text, StringComparison.Ordinal);
            }
        );
    }

    private static DrawnStudy Draw(string name, PaperSize paper) =>
        s_drawings
            .GetOrAdd((name, paper), key => new(() => DrawnStudy.Of(key.Name, key.Paper)))
            .Value;

    private static string Printed(string text) =>
        PdfReading.WithoutSpaces(PrintableText.For(ReportFonts.Regular, text));
}
