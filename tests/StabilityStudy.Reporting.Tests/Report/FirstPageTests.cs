using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.Reporting.Tests.Pdf;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Page 1 is enough to decide: conclusions at one look, one figure against the limit, references with pages.</summary>
public sealed class FirstPageTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Many = "two analytes in two groups";

    [Fact]
    public void Many_sequences_stand_in_a_matrix_and_in_full_on_the_next_page()
    {
        var analysis = OddStudies.All[Many];
        var matrix = DecisionMatrix.Of(analysis);
        var full = FirstPage.InFull(analysis);

        Assert.Equal(analysis.Sequences.Length, matrix.Rows.Length);
        Assert.All(
            analysis.Sequences.Zip(matrix.Rows),
            pair =>
                Assert.Equal(
                    pair.First.Cells.Select(cell => TradeWords.Of(cell.Conclusion)),
                    pair.Second.Cells.Skip(4).Select(cell => cell.Text)
                )
        );
        Assert.NotNull(full);
        Assert.Equal(
            analysis.Sequences.Length,
            Assert.Single(full.Blocks.OfType<VerdictBlock>()).Lines.Length
        );
    }

    [Fact]
    public void A_matrix_without_the_required_share_names_where_a_higher_one_is_asked()
    {
        var analysis = OddStudies.All[Many];
        var protocol = analysis.Protocol;
        var each = protocol.Criteria.OfType<IndividualCriterion>().Single();
        var stricter = each with
        {
            Id = "each-ufh",
            Groups = ["ufh"],
            Limits = [.. each.Limits.Where(choice => choice.Analyte == "PT")],
            SharePercentMinimum = 90,
        };
        var note = DecisionMatrix
            .Of(
                analysis with
                {
                    Protocol = protocol with { Criteria = protocol.Criteria.Add(stricter) },
                }
            )
            .Note;

        Assert.Contains(
            "Required 85 % or 90 %: up to 15 or 10 of 100 such patients' results",
            note,
            Comparison
        );
        Assert.Contains(" 90 % is required of PT ufh. ", note, Comparison);
        Assert.DoesNotContain("is required of", DecisionMatrix.Of(analysis).Note, Comparison);
    }

    [Fact]
    public void Few_sequences_stand_in_full_on_page_1()
    {
        Assert.Null(FirstPage.InFull(OddStudies.All["40 pairs"]));
        Assert.Single(FirstPageParts.Blocks(OddStudies.All["40 pairs"]).OfType<VerdictBlock>());
    }

    [Fact]
    public void The_reason_on_page_1_leaves_its_figures_to_the_table_beside_it()
    {
        var analysis = OddStudies.All["all beyond the measuring interval"];

        Assert.Matches("[0-9]+ of [0-9]+", FirstPageParts.Verdict(analysis).Sentence);
        Assert.DoesNotMatch("[0-9]+ of [0-9]+", FirstPageParts.VerdictInBrief(analysis).Sentence);
    }

    [Fact]
    public void The_figure_shows_each_deciding_mean_against_its_limit()
    {
        var analysis = OddStudies.All["40 pairs"];
        var figure = FirstPageFigure.Of(analysis);
        var means = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Criteria)
            .OfType<BiasResult>()
            .Select(bias => bias.Mean.Value!.Mean);

        Assert.NotNull(figure);
        Assert.Equal(
            means,
            figure
                .Chart.Layers.OfType<IntervalLayer>()
                .SelectMany(layer => layer.Intervals)
                .Select(interval => interval.Estimate)
        );
        Assert.Equal(
            [-7.5, 0, 7.5],
            figure
                .Chart.Layers.OfType<ReferenceLine>()
                .Where(line => line.Direction == LineDirection.Horizontal)
                .Select(line => line.Value)
                .Order()
        );
    }

    [Fact]
    public void Unlike_limits_are_shown_as_multiples_of_the_allowable_bias()
    {
        var analysis = FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell =>
                cell with
                {
                    Criteria =
                    [
                        .. cell.Criteria.Select(result =>
                            result is BiasResult bias
                                ? bias with
                                {
                                    LowerLimit = -2,
                                    UpperLimit = 2,
                                }
                                : result
                        ),
                    ],
                }
        );
        var figure = FirstPageFigure.Of(analysis);
        var first = analysis.Sequences[0].Cells[0].Criteria.OfType<BiasResult>().Single();

        Assert.NotNull(figure);
        Assert.Equal("Mean change / allowable bias", figure.Chart.Y.Label);
        Assert.Equal(
            first.Mean.Value!.Mean / 2,
            figure.Chart.Layers.OfType<IntervalLayer>().First().Intervals[0].Estimate,
            12
        );
    }

    [Fact]
    public void Without_a_mean_held_to_a_limit_there_is_no_figure() =>
        Assert.Null(
            FirstPageFigure.Of(
                OddStudies.All["a group without an eligible pair"] with
                {
                    Sequences = [],
                }
            )
        );

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Signatures_stay_on_page_1_beside_the_figure_of_a_common_study(PaperSize paper)
    {
        var model = ReportBuilder.Build(OddStudies.All["40 pairs"], paper);
        var drawn = PdfDrawing.Draw(model);

        Assert.Contains(model.Sections[0].Blocks, block => block is Floating);
        Assert.All(drawn.SignatureRectangles, place => Assert.Equal(1, place.Page));
    }

    [Theory]
    [InlineData(PaperSize.A4, 3)]
    [InlineData(PaperSize.A4, 11)]
    [InlineData(PaperSize.A4, 60)]
    [InlineData(PaperSize.Letter, 3)]
    [InlineData(PaperSize.Letter, 11)]
    [InlineData(PaperSize.Letter, 60)]
    public void Attention_and_signatures_stay_on_page_1_however_many_sequences_a_study_has(
        PaperSize paper,
        int sequences
    )
    {
        var study = OddStudies.All[Many];
        var analysis = study with
        {
            Sequences =
            [
                .. Enumerable
                    .Range(0, sequences)
                    .Select(i => study.Sequences[i % study.Sequences.Length]),
            ],
        };
        var model = ReportBuilder.Build(analysis, paper);
        // What comes after the conclusions in full moves nothing before it.
        var drawn = PdfDrawing.Draw(model with { Sections = model.Sections[..2] });
        using var document = UglyToad.PdfPig.PdfDocument.Open(drawn.Pdf.ToArray());
        var pages = document.GetPages().Select(PdfReading.Text).ToArray();

        Assert.All(drawn.SignatureRectangles, place => Assert.Equal(1, place.Page));
        Assert.Contains("Notlocked:nothingshows", pages[0], Comparison);
        Assert.Contains("medicaldirectordecides", pages[0], Comparison);
        Assert.Contains("Conclusionsbyanalyte", pages[0], Comparison);
        // Nothing of the matrix is lost where the page ends.
        Assert.Equal(sequences, model.Sections[0].Blocks.OfType<Table>().Single().Rows.Length);
        Assert.Equal(sequences > 11, pages[1].Contains("(continued)", Comparison));
    }

    [Fact]
    [Trait("lane", "slow")]
    public void A_reference_names_the_page_on_which_its_section_starts()
    {
        var analysis = OddStudies.All["40 pairs"] with
        {
            Queries =
            [
                FirstPageParts.Query("a"),
                FirstPageParts.Query("b"),
                FirstPageParts.Query("c"),
            ],
        };
        var pages = PdfDrawing.PagesOf(ReportBuilder.Build(analysis, PaperSize.A4));
        var model = ReportBuilder.Build(analysis, PaperSize.A4, pages);
        using var document = UglyToad.PdfPig.PdfDocument.Open(PdfDrawing.Draw(model).Pdf.ToArray());
        var page = document.GetPage(pages.Pages[QuerySection.Title]);

        Assert.Contains("Dataqueries", PdfReading.Text(page), Comparison);
        Assert.Contains(
            model.Sections[0].Blocks.OfType<Attentions>().Single().Lines,
            line => line.Text.Contains($"\"Data queries\", page {page.Number}", Comparison)
        );
        Assert.Equal("\"Data queries\"", SectionPages.None.Of(QuerySection.Title));
    }
}
