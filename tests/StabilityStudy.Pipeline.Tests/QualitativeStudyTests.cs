using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>A test whose results are words, from the files to the pages. Specimens and results are invented.</summary>
public sealed class QualitativeStudyTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const int Specimens = 60;

    private const string Protocol = """
        format = 1
        code = "LA-RT"
        version = "1"
        time_points = ["8 h"]
        tolerance = { early = "0 min", late = "30 min" }
        baseline_within = "1 h"
        tube_plan = "a tube per time point"
        minimum_days = 5
        window_step = "30 min"
        signatories = [{ role = "author", meaning = "ran this study" }, { role = "approver", meaning = "approves its conclusion" }]
        controls = "kept elsewhere"
        storage = [{ id = "wb-rt", state = "whole blood", cap = "closed", celsius = [18, 25], spin_to_test = "1 h" }]
        group = [{ id = "none", name = "No anticoagulant", specimens = 60 }]
        eligibility = { fill_percent_min = 90, hematocrit_percent_max = 55, clot = "reject", source = "common practice" }

        [[analyte]]
        id = "LA"
        name = "Lupus anticoagulant"
        categories = ["negative", "weak positive", "positive"]
        standard_window = { time = "4 h", source = "common practice" }

        [[criterion]]
        id = "class"
        kind = "classification"
        analytes = ["LA"]
        confidence = 0.95
        share_percent_min = 85
        weak_positives_min = 5

        """;

    private const string Facts = """
        format = 1
        title = "Lupus anticoagulant in whole blood for eight hours"
        facility = "Invented laboratory"
        invented = true
        question = "May whole blood wait eight hours?"

        [[person]]
        code = "LS1"
        name = "Lab Scientist One"
        role = "lab scientist"

        """;

    [Fact]
    public void Classes_that_stay_support_the_delay_and_every_step_says_so()
    {
        var study = ExampleStudy.Analyze(Study(_ => 0));
        var cell = Cell(study.Analysis);
        var kept = Assert.IsType<ClassificationResult>(Assert.Single(cell.Criteria));
        var text = StudyPipeline.RenderText(study, 80, full: true);

        Assert.Equal(Conclusion.Supported, cell.Conclusion);
        Assert.Equal((Specimens, Specimens), (kept.Kept, kept.Counted));
        Assert.Contains("60 of 60 specimens keep their class", Unbroken(text), Comparison);
        Assert.Contains("classes negative, weak positive, positive", Unbroken(text), Comparison);
        Assert.Contains(
            ReportBuilder
                .Build(study.Analysis, PaperSize.A4)
                .Sections.SelectMany(section => section.Blocks)
                .OfType<Table>()
                .SelectMany(table => table.Rows)
                .SelectMany(row => row.Cells),
            cell => cell.Text == "20 negative, 20 weak positive, 20 positive"
        );
        Assert.True(StudyPipeline.Render(study, PaperSize.A4).PageCount > 5);
        Assert.Contains("\"weak positive\"", Json(study), Comparison);
    }

    [Fact]
    public void Classes_that_move_take_the_support_away()
    {
        // Nine of sixty lose a class: 51 of 60 have the exact one-sided bound 0.753 (Clopper and Pearson 1934).
        var study = ExampleStudy.Analyze(Study(i => i % 3 == 2 && i < 27 ? -1 : 0));
        var cell = Cell(study.Analysis);

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Contains(
            "51 of 60 specimens keep their class",
            Unbroken(StudyPipeline.RenderText(study, 80, full: true)),
            Comparison
        );
    }

    [Fact]
    public void Classes_of_one_day_decide_nothing()
    {
        var cell = Cell(ExampleStudy.Analyze(Study(_ => 0, days: 1)).Analysis);

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Contains(cell.Criteria.Single().Reasons, reason => reason.Name() == "too-few-days");
    }

    [Theory]
    [InlineData("positive", 0)]
    [InlineData("weak positive", 6)]
    public void A_control_is_right_when_it_gives_its_class(string found, int leftOut)
    {
        var controls = new StringBuilder(
            "control,analyte,run,tested_at,result,unit,target,allowed_low,allowed_high,kind\n"
        );
        for (var day = 2; day <= 11; day++)
        {
            foreach (var (tube, hour) in new[] { ("A", "08"), ("B", "15") })
            {
                controls.Append(
                    CultureInfo.InvariantCulture,
                    $"QC,LA,{tube}{day},2026-03-{day:00}T{hour}:15-05:00,{(day == 5 ? found : "positive")},,positive,,,control\n"
                );
            }
        }

        var study = ExampleStudy.Analyze(
            WithRuns(Study(_ => 0))
                .Edited("protocol.toml", "controls = \"kept elsewhere\"\n", "")
                .WithText("controls.csv", controls.ToString())
        );

        Assert.Equal(leftOut, Cell(study.Analysis).Disposition.Count(PairStatus.RunNotInControl));
    }

    [Fact]
    public void A_word_that_is_no_class_stops_with_the_words_that_are()
    {
        var files = Study(_ => 0);
        var broken = files.Edited("results.csv", ",positive,", ",postive,");

        var query = Assert.Single(
            StudyPipeline.Analyze(broken).Queries,
            item => item.Severity == Core.Queries.Severity.Stop
        );

        Assert.Contains("negative, weak positive, positive", query.Action, Comparison);
        Assert.Contains("perhaps positive", query.Action, Comparison);
    }

    private static Cell Cell(StudyAnalysis analysis) => analysis.Sequences.Single().Cells.Single();

    /// <summary>With a run a day for each tube.</summary>
    private static StudyBytes WithRuns(StudyBytes files)
    {
        var lines = ExampleStudy.Text(files, "results.csv").TrimEnd().Split('\n');
        return files.WithText(
            "results.csv",
            string.Join(
                '\n',
                lines
                    .Skip(1)
                    .Select(line => line.Split(','))
                    .Select(cells =>
                        string.Join(',', cells)
                        + $",{cells[1]}{int.Parse(cells[4][8..10], CultureInfo.InvariantCulture)}"
                    )
                    .Prepend(lines[0] + ",run")
            ) + "\n"
        );
    }

    private static string Json(AnalyzedStudy study) =>
        Encoding.UTF8.GetString(StudyPipeline.WriteAnalysis(study).Span);

    private static string Unbroken(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>A third of the specimens in each class, on ten days; each delayed class is moved as asked.</summary>
    private static StudyBytes Study(Func<int, int> move, int days = 10)
    {
        string[] classes = ["negative", "weak positive", "positive"];
        var specimens = new StringBuilder(
            "specimen,tube,subject,group,storage,collected_at,spun_at,fill_percent,hematocrit_percent,hemolysis,clot,origin\n"
        );
        var results = new StringBuilder("specimen,tube,analyte,time_point,tested_at,result,unit\n");
        for (var i = 0; i < Specimens; i++)
        {
            var collected = new DateTime(2026, 3, 2, 7, i % 50, 0).AddDays(i % days);
            string At(double hours) =>
                collected.AddHours(hours).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture)
                + "-05:00";
            foreach (var (tube, hours) in new[] { ("A", 0.75), ("B", 8.1) })
            {
                var found = i % 3 + (tube == "B" ? move(i) : 0);
                specimens.Append(
                    CultureInfo.InvariantCulture,
                    $"L-{i:000},{tube},S{i:000},none,wb-rt,{At(0)},{At(hours - 0.4)},95,40,none,no,native\n"
                );
                results.Append(
                    CultureInfo.InvariantCulture,
                    $"L-{i:000},{tube},LA,{(tube == "A" ? "baseline" : "8 h")},{At(hours)},{classes[found]},\n"
                );
            }
        }

        return StudyBytes.Of(
            new Dictionary<string, string>
            {
                ["protocol.toml"] = Protocol,
                ["study.toml"] = Facts,
                ["specimens.csv"] = specimens.ToString(),
                ["results.csv"] = results.ToString(),
            }.Select(file =>
                KeyValuePair.Create(
                    file.Key,
                    (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(file.Value)
                )
            )
        );
    }
}
