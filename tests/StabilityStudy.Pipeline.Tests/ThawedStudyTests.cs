using System.Globalization;
using System.Text;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>The ready protocol for thawed plasma with invented results of antithrombin: time counts from thawing, in the data and in the words.</summary>
[Trait("lane", "slow")]
public sealed class ThawedStudyTests
{
    private const int Specimens = 50;
    private const int Days = 10;

    private const string Facts = """
        format = 1
        title = "Thawed plasma"
        facility = "Invented laboratory"
        question = "How long may thawed plasma wait?"
        invented = true
        time_zone = "Etc/UTC"

        [[person]]
        code = "LS1"
        name = "Person One"
        role = "lab scientist"

        [[instrument]]
        id = "AN1"
        name = "Analyzer one"

        [[lot]]
        id = "R1"
        kind = "reagent"
        analyte = "AT"
        expires = "2027-01-31"

        [files]
        specimens = "specimens.csv"
        results = "results.csv"
        controls = "controls.csv"

        """;

    private static readonly (string TimePoint, int Minutes)[] s_times =
    [
        ("baseline", 10),
        ("4 h", 242),
        ("8 h", 484),
        ("24 h", 1445),
    ];

    private static readonly AnalyzedStudy s_study = ExampleStudy.Analyze(Study());

    [Fact]
    public void It_is_supported_up_to_the_last_time_after_thawing()
    {
        var sequence = s_study.Analysis.Sequences.Single(item =>
            item.Analyte == "AT" && item.Storage == "thawed-rt"
        );

        Assert.Equal(TimeSpan.FromHours(24), sequence.Window?.Time);
        Assert.All(sequence.Cells, cell => Assert.Equal(Conclusion.Supported, cell.OwnConclusion));
    }

    [Fact]
    public void The_report_counts_from_thawing_and_never_says_collection_of_a_window()
    {
        var text = StudyPipeline.RenderText(s_study, 4000, full: true);

        Assert.Contains(
            "is supported up to 24 h after thawing",
            StudyPipeline.Headline(s_study, 4000) + StudyPipeline.Summarize(s_study, 4000),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Hours since thawing",
            StudyPipeline.RenderHtml(s_study),
            StringComparison.Ordinal
        );
        Assert.Contains("4 h, 8 h, 24 h after thawing", text, StringComparison.Ordinal);
        Assert.Contains("within 15 min of thawing", text, StringComparison.Ordinal);
        Assert.DoesNotContain("h after collection", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Hours from collection", text, StringComparison.Ordinal);
        Assert.NotEmpty(StudyPipeline.Render(s_study, PaperSize.A4).Pdf.ToArray());
    }

    private static StudyBytes Study()
    {
        var (tubes, results, controls) = (
            new StringBuilder(
                "specimen,tube,subject,group,storage,collected_at,spun_at,separated_at,frozen_at,thawed_at,fill_percent,hematocrit_percent,clot\n"
            ),
            new StringBuilder(
                "specimen,tube,analyte,time_point,tested_at,result,unit,run,instrument,lot,operator\n"
            ),
            new StringBuilder(
                "control,analyte,run,tested_at,result,unit,target,allowed_low,allowed_high\n"
            )
        );
        for (var i = 0; i < Specimens; i++)
        {
            var collected = new DateTime(2026, 3, 2, 8, i % 7, 0).AddDays(i % Days);
            var thawed = collected.AddDays(14);
            foreach (var ((timePoint, minutes), number) in s_times.Select((time, n) => (time, n)))
            {
                var tested = thawed.AddMinutes(minutes + (i % 3));
                var run = $"{thawed:yyyy-MM-dd}-{number}";
                var result = (i < 15 ? 50 + (2 * i) : 80 + i) + ((i / (number + 1) % 3) - 1);
                tubes.Append(
                    CultureInfo.InvariantCulture,
                    $"S{i:00},S{i:00}-{number},P{i:00},none,thawed-rt,{Time(collected)},{Time(collected.AddMinutes(40))},{Time(collected.AddMinutes(60))},{Time(collected.AddMinutes(90))},{Time(thawed)},100,40,no\n"
                );
                results.Append(
                    CultureInfo.InvariantCulture,
                    $"S{i:00},S{i:00}-{number},AT,{timePoint},{Time(tested)},{result},%,{run},AN1,R1,LS1\n"
                );
                if (i < Days)
                {
                    controls.Append(
                        CultureInfo.InvariantCulture,
                        $"QC-1,AT,{run},{Time(tested)},{99 + (i % 3)},%,100,92,108\n"
                    );
                }
            }
        }

        return StudyBytes.Of(
            new (string Name, string Text)[]
            {
                (ExampleStudy.Protocol, ForAntithrombinAtRoomTemperature()),
                (ExampleStudy.Facts, Facts),
                (ExampleStudy.Specimens, tubes.ToString()),
                (ExampleStudy.Results, results.ToString()),
                (ExampleStudy.Controls, controls.ToString()),
            }.Select(file =>
                KeyValuePair.Create(
                    file.Name,
                    (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(file.Text)
                )
            )
        );
    }

    /// <summary>The ready protocol without its other tests and its other storage.</summary>
    private static string ForAntithrombinAtRoomTemperature()
    {
        var parts = File.ReadAllText(
                Path.Combine(RepositoryFile.Root, "protocols", "thawed-plasma.toml")
            )
            .ReplaceLineEndings("\n")
            .Split("[[analyte]]\n");
        var end = parts[^1].IndexOf("# --- Limits", StringComparison.Ordinal);
        var text =
            parts[0]
            + "[[analyte]]\n"
            + parts.Single(part => part.StartsWith("id = \"AT\"", StringComparison.Ordinal))
            + parts[^1][end..];
        return string.Join(
            '\n',
            text.Split('\n')
                .Where(line => !line.Contains("\"thawed-cold\"", StringComparison.Ordinal))
                .Select(line =>
                    line.StartsWith("limits = {", StringComparison.Ordinal)
                        ? $"limits = {{ AT = \"at-{(line.Contains("at-bias", StringComparison.Ordinal) ? "bias" : "each")}\" }}"
                        : line
                )
        );
    }

    private static string Time(DateTime at) =>
        at.ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);
}
