using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>A revision, mapped words and the times of frozen portions in the report.</summary>
public sealed class RevisedStudyTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly StudyAnalysis s_plain = OddStudies.All["40 pairs"];

    private static readonly StudyAnalysis s_revised = OddStudies.All[
        "a revision with words read as others and frozen portions"
    ];

    [Fact]
    public void Page_1_tells_the_revision_and_every_page_its_number()
    {
        var report = ReportBuilder.Build(s_revised, PaperSize.A4);

        Assert.Contains(
            "Revision 2 of this report replaces the report with inputs 3f09c2d41b7a5e68. Reason: the lot of the reagent was corrected.",
            FirstPageParts.Paragraphs(s_revised),
            Comparison
        );
        Assert.EndsWith("version 1 · report revision 2", report.Header.Left, Comparison);
        Assert.Contains(
            $"replaces the report with inputs {RevisedStudy.Revision.Replaces}.",
            ModelText.Of([RecordSection.Of(s_revised, null)]),
            Comparison
        );
    }

    [Fact]
    public void The_first_report_says_nothing_of_a_revision_words_or_freezing()
    {
        var report = ReportBuilder.Build(s_plain, PaperSize.A4);
        var text = ModelText.Of(report.Sections);

        Assert.EndsWith("version 1", report.Header.Left, Comparison);
        Assert.DoesNotContain("Revision", text, Comparison);
        Assert.DoesNotContain("thawing", text, Comparison);
        Assert.DoesNotContain(report.Sections, section => section.Title == OwnFileSection.Title);
    }

    [Fact]
    public void Every_mapped_word_has_a_row_with_file_column_and_meaning()
    {
        var section = OwnFileSection.Of(s_revised)!;
        var table = Assert.Single(section.Blocks.OfType<Table>());

        Assert.Equal(
            [
                "tubes.csv|clot|(nothing)|no",
                "tubes.csv|clot|ja|yes",
                "tubes.csv|subject|12 entries, not repeated here, as they may name persons|study codes",
                "tubes.csv|specimen|1 entry, not repeated here, as they may name persons|study codes",
                "export.csv|unit|sec|s",
            ],
            table.Rows.Select(row => string.Join('|', row.Cells.Select(cell => cell.Text)))
        );
        Assert.Equal(
            "export.csv: times are written dd.MM.yyyy HH:mm; decimals follow a comma; headers that stand for columns: \"Ergebnis\" for result; not in the file and stated in study.toml for every row: analyte aPTT.",
            Assert.Single(section.Blocks.OfType<Paragraph>()).Text
        );
    }

    [Fact]
    public void Without_mapped_words_there_is_no_table()
    {
        var analysis = s_revised with
        {
            Facts = s_revised.Facts with
            {
                OwnFiles = [RevisedStudy.OwnFiles[1] with { Words = [] }],
            },
        };

        Assert.Empty(OwnFileSection.Of(analysis)!.Blocks.OfType<Table>());
    }

    [Fact]
    public void Times_that_all_rows_share_stand_once_on_page_1()
    {
        const string times =
            "frozen 41 min to 1 h 19 min after collection, tested 5 min to 11 min after thawing";

        Assert.Equal(times, PortionTimes.Shared(s_revised));
        Assert.Contains(times, FirstPageParts.Paragraphs(s_revised), Comparison);
        Assert.DoesNotContain(
            FirstPageParts.Decisions(s_revised).Rows,
            row => row.Facts.Contains("thawing", Comparison)
        );
    }

    [Fact]
    public void Times_that_differ_stand_in_each_row()
    {
        var two = RevisedStudy.Frozen(
            StudyRows.Analyze(
                StudyRows.Protocol() with
                {
                    Groups =
                    [
                        new PatientGroup("none", "No anticoagulant", 40, null),
                        new PatientGroup("ufh", "Heparin", 40, null),
                    ],
                },
                [.. OddStudies.Specimens(40, "none"), .. OddStudies.Specimens(30, "ufh")]
            )
        );

        Assert.Null(PortionTimes.Shared(two));
        Assert.DoesNotContain("thawing", FirstPageParts.Paragraphs(two), Comparison);
        Assert.Equal(
            ["Frozen 41 min to 1 h 19 min", "Frozen 41 min to 1 h 09 min"],
            FirstPageParts
                .Decisions(two)
                .Rows.OrderBy(row => row.Number)
                .Select(row =>
                    row.Facts[
                        row.Facts.IndexOf("Frozen", Comparison)..row.Facts.IndexOf(
                            " after collection",
                            Comparison
                        )
                    ]
                )
        );
    }

    [Fact]
    public void A_pair_that_does_not_count_lends_its_times_to_nothing()
    {
        var left = FirstPageParts.WithCell(
            s_revised,
            s_revised.Sequences[0].Cells.Length - 1,
            cell =>
                cell with
                {
                    Pairs = cell.Pairs.SetItem(
                        1,
                        RevisedStudy.Frozen(cell.Pairs[1], 1, 600) with
                        {
                            Status = PairStatus.Ineligible,
                        }
                    ),
                }
        );

        Assert.Equal(
            "frozen 42 min to 1 h 19 min after collection, tested 5 min to 11 min after thawing",
            PortionTimes.Shared(left)
        );
    }

    [Fact]
    public void The_table_of_every_specimen_tells_the_minutes_outside_the_freezer()
    {
        var table = PairSection.Of(s_revised, full: false).Blocks.OfType<Table>().First();
        var at = table.Columns.Select(column => column.Header).ToList().IndexOf("Not frozen, min");

        Assert.Equal("–; –", table.Rows[0].Cells[at].Text);
        Assert.Equal("41, 6; 41, 6", table.Rows[1].Cells[at].Text);
        Assert.DoesNotContain(
            PairSection.Of(s_plain, full: false).Blocks.OfType<Table>().First().Columns,
            column => column.Header == "Not frozen, min"
        );
    }
}
