using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Certainty;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>What single sections and figures of the report say.</summary>
public sealed class SectionTextTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void Without_a_limit_for_single_specimens_the_figure_claims_none()
    {
        var analysis = CriterionTextTests.WithBias(ChangeScale.Percent, 7.5m, null);
        var figure = Figure(analysis);

        Assert.Contains(
            "No limit for single specimens in the protocol.",
            figure.Caption,
            Comparison
        );
        Assert.DoesNotContain("Outside", figure.AlternativeText, Comparison);
        Assert.DoesNotContain(
            Legends(figure),
            text => text.Contains("allowable difference", Comparison)
        );
    }

    [Fact]
    public void With_a_limit_for_single_specimens_the_figure_draws_it()
    {
        var figure = Figure(OddStudies.All["40 pairs"]);

        Assert.Contains("allowable difference", Legends(figure));
        Assert.Contains("within the allowable difference", Legends(figure));
    }

    [Fact]
    public void Many_specimens_outside_are_counted_in_the_figure_and_not_named()
    {
        var analysis = StudyRows.Analyze(
            StudyRows.Protocol() with
            {
                Limits =
                [
                    new Limit("bias", 7.5m, null, "invented"),
                    new Limit("each", 0.5m, null, "invented"),
                ],
            },
            OddStudies.Specimens(40, "none")
        );
        var cell = CriterionTextTests.FirstCell(analysis);
        var outside = cell.Pairs.Count(pair => CellAxes.IsOutside(cell, pair));
        var figure = Figure(analysis);
        var points = figure
            .Chart.Layers.OfType<PointLayer>()
            .Where(layer => layer.Marker == MarkerShape.FilledSquare)
            .SelectMany(layer => layer.Points)
            .ToArray();

        Assert.True(outside > SpecimenNames.Most);
        Assert.Contains(
            Legends(figure),
            text => text.EndsWith("marked under Every specimen", Comparison)
        );
        Assert.NotEmpty(points);
        Assert.All(points, point => Assert.Null(point.Label));
    }

    [Theory]
    [InlineData(ControlRule.KeptElsewhere, "Control results were not checked by this program")]
    [InlineData(ControlRule.EveryRun, "every run needs a control result")]
    public void The_conduct_of_the_study_says_what_became_of_controls(
        ControlRule rule,
        string expected
    )
    {
        var analysis = OddStudies.All["40 pairs"];
        var section = ConductSection.Of(
            analysis with
            {
                Protocol = analysis.Protocol with { Controls = rule },
            }
        );

        Assert.Contains(
            section.Blocks.OfType<DefinitionList>().SelectMany(list => list.Items),
            item => item.Term == "Controls" && item.Explanation.Contains(expected, Comparison)
        );
    }

    [Fact]
    public void The_lines_of_baseline_and_delayed_result_are_given_with_the_files_they_are_in()
    {
        var analysis = OddStudies.All["40 pairs"];
        var table = PairSection.Of(analysis, full: true).Blocks.OfType<Table>().First();
        var pair = CriterionTextTests.FirstCell(analysis).Pairs[0];
        var lines = $"{pair.Baseline!.SourceRow}, {pair.Delayed!.SourceRow}";

        Assert.Contains(table.Rows, row => row.Cells.Any(cell => cell.Text == lines));
        Assert.Contains("laboratory's own file results.csv", table.Note, Comparison);
        Assert.Contains("source_row", table.Note, Comparison);
    }

    [Fact]
    public void The_time_before_and_after_spinning_is_listed_where_it_is_known()
    {
        var table = PairSection
            .Of(OddStudies.All["40 pairs"], full: true)
            .Blocks.OfType<Table>()
            .First();
        var known = CriterionTextTests
            .FirstCell(OddStudies.All["40 pairs"])
            .Pairs[0]
            .TimeBeforeSpinning;

        Assert.Equal(
            known is not null,
            table.Columns.Any(column => column.Header == "Before, after spinning")
        );
        Assert.NotNull(known);
        Assert.Equal("5:40, 0:25", table.Rows[0].Cells[7].Text);
    }

    [Theory]
    [InlineData(MissingReason.NotTested)]
    [InlineData(MissingReason.QuantityNotSufficient)]
    [InlineData(MissingReason.NoReportableResult)]
    public void A_tube_without_a_result_counts_as_outside_whatever_the_reason(MissingReason reason)
    {
        var pair = CriterionTextTests.FirstCell(OddStudies.All["40 pairs"]).Pairs[0];
        var missing = pair with
        {
            Status = PairStatus.NoDelayedResult,
            Delayed = pair.Delayed! with { Result = new MissingResult("x", reason) },
        };

        Assert.Equal("no result: outside", TradeWords.Short(missing));
    }

    [Fact]
    public void The_digest_can_be_made_by_hand() =>
        Assert.Contains(
            RecordSection
                .Of(OddStudies.All["40 pairs"], resultDigest: null)
                .Blocks.OfType<Paragraph>()
                .Select(paragraph => paragraph.Text),
            text => text.Contains("one line feed, the last line too", Comparison)
        );

    [Fact]
    public void The_hash_of_what_was_computed_is_in_the_list_and_at_the_foot_of_every_page()
    {
        var hash = new string('a', 60) + "bcde";
        var model = ReportBuilder.Build(
            OddStudies.All["40 pairs"],
            PaperSize.A4,
            pages: null,
            hash
        );

        Assert.EndsWith(" · results aaaaaaaaaaaaaaaa", model.Header.Fingerprint, Comparison);
        Assert.Contains(
            model.Sections.SelectMany(section => section.Blocks).OfType<MonospaceLines>(),
            block => block.Lines.Contains(hash + "  analysis.json")
        );
    }

    [Theory]
    [InlineData("Hodges–Lehmann change")]
    [InlineData("Correlation r")]
    [InlineData("ln(1 + t / 1 h)")]
    [InlineData("Undecidable")]
    [InlineData("Doubt")]
    [InlineData("Left out")]
    [InlineData("Bridging plasma")]
    [InlineData("Decision level")]
    [InlineData("Reclassification")]
    public void The_words_of_the_report_are_explained(string word) =>
        Assert.Equal(
            [word],
            WordsSection
                .Of($"Here stands {word.ToUpperInvariant()} and nothing else.")
                .Blocks.OfType<DefinitionList>()
                .SelectMany(list => list.Items)
                .Select(item => item.Term)
                .Intersect([word])
        );

    [Fact]
    public void A_word_that_is_not_used_is_not_explained() =>
        Assert.Empty(
            WordsSection
                .Of("nothing")
                .Blocks.OfType<DefinitionList>()
                .SelectMany(list => list.Items)
        );

    [Fact]
    public void Lines_that_change_a_conclusion_come_first_with_what_it_would_be()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = CriterionTextTests.FirstCell(analysis) with
        {
            OwnConclusion = Conclusion.Inconclusive,
            Robustness =
            [
                new(new(RobustnessKind.MedianInPlaceOfMean), Conclusion.Inconclusive, false),
                new(new(RobustnessKind.OneMoreOutside, 1), Conclusion.NotSupported, true),
            ],
        };
        var sequence = analysis.Sequences[0] with { Cells = [cell] };
        var tables = RobustnessSection
            .Of(analysis with { Sequences = [sequence] }, full: true)
            .Blocks.OfType<Table>()
            .ToArray();

        Assert.Equal(
            "if one more specimen had been outside the limit",
            tables[0].Rows[1].Cells[1].Text
        );
        Assert.Equal(
            ["inconclusive", "not supported"],
            tables[0].Rows[1].Cells[2..].Select(found => found.Text)
        );
        Assert.Equal(
            [
                ["Nothing: what its own figures say", "inconclusive"],
                ["With the median in place of the mean", "stays"],
                ["If one more specimen had been outside the limit", "not supported"],
            ],
            tables[1].Rows.Select(row => row.Cells.Select(item => item.Text).ToArray())
        );
    }

    /// <summary>σ² = ln(1 + 0.02² + 0.05²) = 0.0028959, 1.96·√2·σ = 0.14916: from −13.9 to +16.1 %, worked out apart.</summary>
    [Fact]
    public void A_limit_from_biological_variation_stands_beside_the_reference_change()
    {
        var analysis = OddStudies.All["40 pairs"];
        var protocol = analysis.Protocol with
        {
            Analytes = [analysis.Protocol.Analytes[0] with { BetweenRunCvPercent = 2 }],
            Limits =
            [
                analysis.Protocol.Limits[0] with
                {
                    Basis = new LimitBasis(5, 8, GoalGrade.Desirable, GoalKind.Bias),
                },
                .. analysis.Protocol.Limits[1..],
            ],
        };
        var source = CriteriaTables.Limits(protocol, []).Rows[0].Cells[2].Text;

        Assert.Contains("differ by −13.9 to +16.1 % in 19 of 20", source, Comparison);
    }

    [Fact]
    public void The_drift_before_the_baseline_is_stated_and_the_published_curve_only_where_it_holds()
    {
        var section = DriftSection.Of(OddStudies.All["two analytes in two groups"], full: false);
        var heads = section.Blocks.OfType<Table>().First().Columns.Select(item => item.Header);

        Assert.Contains("Modeled before the baseline, %", heads);
        Assert.Contains("not for heparin", Last(section), Comparison);

        var analysis = OddStudies.All["two analytes in two groups"];
        var heparin = analysis with
        {
            Sequences = [.. analysis.Sequences.Where(item => item.Group == "ufh")],
        };
        Assert.StartsWith(
            "No published curve",
            Last(DriftSection.Of(heparin, full: false)),
            Comparison
        );
    }

    [Fact]
    public void The_published_curve_is_drawn_beside_the_group_without_anticoagulant_alone()
    {
        var analysis = OddStudies.All["two analytes in two groups"];
        var drawn = DriftSection
            .Charts(analysis)
            .Select(block =>
                block
                    .Chart.Layers.OfType<LineLayer>()
                    .Count(line => line.Legend == "published, context only")
            );

        Assert.Equal(
            analysis.Sequences.Select(item =>
                item is { Analyte: "aPTT" or "PT", Group: "none" } ? 1 : 0
            ),
            drawn
        );
    }

    /// <summary>Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117: aPTT 6.1 % at 6 h and 10 % at 24 h, PT 2.9 % a day.</summary>
    [Theory]
    [InlineData("aPTT", 6, 6.1)]
    [InlineData("aPTT", 24, 10)]
    [InlineData("PT", 24, 2.9)]
    [InlineData("PT", 12, 1.45)]
    public void Published_curves_go_through_the_published_figures(
        string analyte,
        double hours,
        double percent
    )
    {
        var names = CriterionTextTests.Names(OddStudies.All["40 pairs"]);
        var drift = PublishedDrift.For(
            names with
            {
                Analyte = names.Analyte with { Id = analyte },
                Group = names.Group with { Id = "none" },
            }
        );

        Assert.Equal(percent, drift!.PercentAfter(hours), 0.1);
    }

    [Fact]
    public void No_curve_is_drawn_beyond_the_longest_actual_delay()
    {
        var analysis = OddStudies.All["40 pairs"];
        var lines = DriftSection
            .Charts(analysis)
            .SelectMany(block => block.Chart.Layers.OfType<LineLayer>())
            .SelectMany(line => line.Positions);

        Assert.All(
            lines,
            position => Assert.InRange(position.X, 0, LongestDelay.Of(analysis.Sequences[0]))
        );
    }

    private static string Last(Section section) => section.Blocks.OfType<Paragraph>().Last().Text;

    private static ChartBlock Figure(StudyAnalysis analysis)
    {
        var names = CriterionTextTests.Names(analysis);
        var axes = new CellAxes(analysis.Sequences[0], names);
        return DifferencePlot.Of(CriterionTextTests.FirstCell(analysis), names, axes, 50);
    }

    private static IEnumerable<string> Legends(ChartBlock figure) =>
        figure
            .Chart.Layers.Select(layer =>
                layer switch
                {
                    PointLayer points => points.Legend,
                    LineLayer line => line.Legend,
                    BandLayer band => band.Legend,
                    ReferenceLine line => line.Legend,
                    _ => null,
                }
            )
            .OfType<string>();
}
