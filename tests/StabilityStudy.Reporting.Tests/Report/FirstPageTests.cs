using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.Reporting.Tests.Pdf;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Page 1 is enough to decide: what follows for each row with what speaks against it, one figure against the limit, references with pages.</summary>
public sealed class FirstPageTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Many = "two analytes in two groups";

    public static TheoryData<string> Names => OddStudies.Names;

    [Fact]
    public void Many_sequences_have_a_row_each_and_every_figure_on_the_next_page()
    {
        var analysis = OddStudies.All[Many];
        var table = FirstPageParts.Decisions(analysis);
        var full = FirstPage.InFull(analysis);

        Assert.Equal(analysis.Sequences.Length, table.Rows.Length);
        Assert.Equal(
            Enumerable.Range(0, analysis.Sequences.Length),
            table.Rows.Select(row => row.Number).Order()
        );
        Assert.NotNull(full);
        Assert.Single(full.Blocks.OfType<Table>());
        Assert.Contains(
            $"{analysis.Sequences.Length} questions: ",
            FirstPageParts.Paragraphs(analysis),
            Comparison
        );
    }

    [Fact]
    public void Few_sequences_show_every_time_point()
    {
        var analysis = OddStudies.All["40 pairs"];
        Assert.Null(FirstPage.InFull(analysis));
        Assert.Equal(
            analysis.Sequences[0].Cells.Select(cell => TradeWords.Of(cell.Conclusion)),
            FirstPageParts.Decisions(analysis).Rows[0].Evidence.Select(line => line.Conclusion)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_headline_counts_the_reservations_and_what_contradicts_comes_first(string name)
    {
        foreach (var row in FirstPageParts.Decisions(OddStudies.All[name]).Rows)
        {
            if (row.Shape is VerdictShape.Supported or VerdictShape.ShorterThanToday)
            {
                Assert.Equal(
                    row.Reservations.IsEmpty,
                    !row.Conclusion.Contains("reservation", Comparison)
                );
                Assert.True(
                    row.Reservations.IsEmpty
                        || row.Conclusion.Contains(
                            $"with {row.Reservations.Length} reservation",
                            Comparison
                        ),
                    row.Conclusion
                );
            }

            Assert.Equal(
                row.Reservations.OrderByDescending(item => item.Contradicts),
                row.Reservations
            );
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_gravest_rows_come_first(string name)
    {
        var ranks = FirstPageParts
            .Decisions(OddStudies.All[name])
            .Rows.Select(row =>
                row.Shape is VerdictShape.NotSupported or VerdictShape.ShorterThanToday ? 0
                : row.Shape == VerdictShape.Supported
                && row.Reservations.Any(item => item.Contradicts)
                    ? 1
                : 2
            )
            .ToArray();
        Assert.Equal(ranks.Order(), ranks);
    }

    /// <summary>What contradicts a supported window stands on page 1 in any study, on either paper: beside its row, in its one sentence, or with the names of its rows.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void What_contradicts_a_claim_is_on_page_1_on_either_paper(string name)
    {
        var analysis = OddStudies.All[name];
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            RequireOnFirstPage(analysis, paper);
        }
    }

    private static void RequireOnFirstPage(Core.Analysis.StudyAnalysis analysis, PaperSize paper)
    {
        var model = ReportBuilder.Build(analysis, paper);
        var drawn = PdfDrawing.Draw(model with { Sections = model.Sections[..1] });
        using var document = UglyToad.PdfPig.PdfDocument.Open(drawn.Pdf.ToArray());
        var page = Letters(PdfReading.Text(document.GetPage(1)));
        Assert.All(
            FirstPageParts
                .Decisions(analysis)
                .Rows.SelectMany(row => row.Reservations)
                .Where(item => item.Contradicts),
            item =>
                Assert.Contains(
                    Letters(item.Point.Length == 0 ? item.Text : item.Point),
                    page,
                    Comparison
                )
        );
        Assert.All(drawn.SignatureRectangles, place => Assert.Equal(1, place.Page));
        Assert.All(drawn.DecisionRectangles, place => Assert.Equal(1, place.Page));
        Assert.Equal(
            FirstPageParts.Decisions(analysis).IsDecidedInRows
                ? Core.Analysis.ConcludedWindow.Of(analysis).Length
                : 0,
            drawn.DecisionRectangles.Length
        );
        Assert.Contains("Criteriafirst?", page, Comparison);
        Assert.Contains("medicaldirectordecides", page, Comparison);
    }

    private static string Letters(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [Fact]
    public void A_window_shorter_than_todays_warns_and_says_what_to_decide_at_once()
    {
        var study = OddStudies.All["40 pairs"];
        var protocol = study.Protocol;
        var analysis = study with
        {
            Protocol = protocol with
            {
                Analytes =
                [
                    .. protocol.Analytes.Select(analyte =>
                        analyte with
                        {
                            StandardWindow = analyte.StandardWindow with
                            {
                                Time = TimeSpan.FromHours(100),
                            },
                        }
                    ),
                ],
            },
        };
        var row = FirstPageParts.Decisions(analysis).Rows[0];

        Assert.Equal(VerdictShape.ShorterThanToday, row.Shape);
        Assert.Contains(", shorter than today", row.Conclusion, Comparison);
        Assert.Contains("an interim rule", row.DecideNow, Comparison);
        Assert.Contains("look back at results already reported", row.DecideNow, Comparison);
        Assert.Null(FirstPageParts.Decisions(study).Rows[0].DecideNow);
    }

    [Fact]
    public void What_within_limit_means_is_said_in_patients()
    {
        var text = Assert
            .Single(
                FirstPageParts.Blocks(OddStudies.All["40 pairs"]).OfType<KeyMessage>(),
                message => !message.IsPlain
            )
            .Text;
        Assert.Contains("with 95 % confidence", text, Comparison);
        Assert.Contains("at least 85 of 100 patients", text, Comparison);
        Assert.Contains("is unknown, at most: ", text, Comparison);
    }

    [Fact]
    public void Without_a_lock_nothing_shows_that_the_criteria_came_first()
    {
        var text = FirstPageParts.CriteriaFirst(OddStudies.All["40 pairs"]);
        Assert.StartsWith(
            "Not locked: nothing shows that the criteria came before the data.",
            text,
            Comparison
        );
        Assert.Contains("Nobody signed the criteria beforehand.", text, Comparison);
    }

    [Fact]
    public void The_cautions_that_bear_on_the_decision_stand_on_page_1()
    {
        var text = FirstPageParts.Paragraphs(OddStudies.All["40 pairs"]);
        Assert.Contains("medical director decides", text, Comparison);
        Assert.Contains("accreditor's rules prevail", text, Comparison);
        Assert.Contains("when reagent, instrument or tube changes", text, Comparison);
    }

    [Theory]
    [InlineData("exclusion-after-result", true)]
    [InlineData("run-without-control", false)]
    public void A_query_about_a_row_is_one_of_its_reservations(string code, bool contradicts)
    {
        var study = OddStudies.All["40 pairs"];
        var query = FirstPageParts.Query(code) with
        {
            Scope = QueryScope.Of(study.Sequences[0].Cells[0].Key),
        };
        var before = FirstPageParts.Decisions(study).Rows[0].Reservations;
        var after = FirstPageParts
            .Decisions(study with { Queries = study.Queries.Add(query) })
            .Rows[0]
            .Reservations;
        var added = Assert.Single(after.Except(before));
        Assert.Equal(query.Kind.Point, added.Point);
        Assert.Equal($"At 6 h: Message of {code}.", added.Text);
        Assert.Equal(contradicts, added.Contradicts);
    }

    [Fact]
    public void What_belongs_to_no_row_is_counted()
    {
        var study = OddStudies.All["40 pairs"] with
        {
            Queries =
            [
                FirstPageParts.Query("a-last-code"),
                FirstPageParts.Query("clot-not-recorded"),
                FirstPageParts.Query("lot-not-recorded"),
            ],
        };
        Assert.Contains(
            "Clot not always recorded; 2 open queries: page 88.",
            FirstPageParts.CriteriaFirst(study),
            Comparison
        );
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
    [InlineData(PaperSize.A4, 72)]
    [InlineData(PaperSize.Letter, 3)]
    [InlineData(PaperSize.Letter, 11)]
    [InlineData(PaperSize.Letter, 72)]
    public void All_is_decided_on_page_1_however_many_sequences_a_study_has(
        PaperSize paper,
        int sequences
    )
    {
        var study = OddStudies.All[Many];
        RequireOnFirstPage(
            study with
            {
                Sequences =
                [
                    .. Enumerable
                        .Range(0, sequences)
                        .Select(i =>
                            study.Sequences[i % study.Sequences.Length] with
                            {
                                Storage = study.Protocol.Storages[0].Id,
                            }
                        ),
                ],
            },
            paper
        );
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

        Assert.Contains("Openqueries", PdfReading.Text(page), Comparison);
        Assert.Contains(
            model.Sections[0].Blocks.OfType<KeyMessage>(),
            message => message.Text.Contains($": page {page.Number}.", Comparison)
        );
        Assert.Equal("\"Open queries\"", SectionPages.None.Of(QuerySection.Title));
    }
}
