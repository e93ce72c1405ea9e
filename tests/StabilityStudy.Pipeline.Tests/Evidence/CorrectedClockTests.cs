using System.Globalization;
using System.Text.RegularExpressions;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A report on a study with a corrected clock has the figures of the right times, tells the correction, and is verified.</summary>
[Trait("lane", "slow")]
public sealed partial class CorrectedClockTests
{
    private const string Run = "2026-03-13-6H";

    [Fact]
    public void A_corrected_clock_gives_the_right_figures_and_is_told_on_page_1()
    {
        var right = ExampleStudy.Analyze(ShortStudy.Bytes);
        var wrong = Recorded(
            ExampleStudy.Results,
            Recorded(ExampleStudy.Controls, ShortStudy.Bytes)
        );
        var study = wrong.WithText(
            StudyBytes.FactsName,
            ExampleStudy.Text(wrong, StudyBytes.FactsName)
                + $"""

                [[clock_correction]]
                runs = ["{Run}"]
                minutes = 60
                reason = "Clock compared with that of the laboratory: one hour behind."
                by = "LS1"
                on = "2026-03-16"

                """
        );
        var corrected = ExampleStudy.Analyze(study);

        Assert.Contains(
            StudyPipeline.Analyze(wrong).Queries,
            query => query.Code == "run-an-hour-early"
        );
        Assert.Equal(
            ConclusionText.WithFigures(right.Analysis),
            ConclusionText.WithFigures(corrected.Analysis)
        );
        var query = Assert.Single(
            corrected.Analysis.Queries,
            query => query.Code == "clock-corrected"
        );
        Assert.Contains("60 min are added to each", query.Message, StringComparison.Ordinal);

        var report = EvidenceExample.Report(study);
        Assert.True(AttachedStudy.TryRead(report, out var attached, out var fault), fault);
        var recomputed = Recomputation.Of(attached);
        Assert.Equal("", string.Join('\n', recomputed.Faults));
        Assert.Equal(PagesOutcome.Same, recomputed.Pages);
        var text = string.Join(
            ' ',
            StudyPipeline
                .RenderText(corrected, 120, full: true)
                .Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)
        );
        Assert.Contains("+60 min in the run " + Run, text, StringComparison.Ordinal);
    }

    /// <summary>The times of the run as a clock an hour behind recorded them.</summary>
    private static StudyBytes Recorded(string name, StudyBytes files) =>
        files.WithText(
            name,
            string.Join(
                '\n',
                ExampleStudy
                    .Text(files, name)
                    .Split('\n')
                    .Select(line =>
                        line.Contains(Run, StringComparison.Ordinal)
                            ? Hour()
                                .Replace(
                                    line,
                                    match =>
                                        $"T{int.Parse(match.Groups["hour"].ValueSpan, CultureInfo.InvariantCulture) - 1:00}:"
                                )
                            : line
                    )
            )
        );

    [GeneratedRegex("T(?<hour>[0-9]{2}):", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Hour();
}
