using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>A study that is not as it should be, and what is said of it.</summary>
/// <param name="Name">What is awkward about it.</param>
/// <param name="Study">The study.</param>
/// <param name="Conclusions">The conclusion of each time point in order; "Stop" when nothing may be computed.</param>
/// <param name="Code">A reason, doubt or query that must be there.</param>
/// <param name="Words">A part of what it says.</param>
internal sealed record AwkwardStudy(
    string Name,
    SmallStudy Study,
    string Conclusions,
    string Code,
    string Words
)
{
    /// <summary>A code that must not be there.</summary>
    public string? Silent { get; init; }

    /// <summary>Hours of the supported window.</summary>
    public double? WindowHours { get; init; }
}

/// <summary>How awkward studies are built and held to what is expected of them.</summary>
internal static class AwkwardStudies
{
    public static SmallStudy Quiet { get; } = SmallStudy.Quiet(40);

    public static TheoryData<string> Names(ImmutableArray<AwkwardStudy> studies) =>
        [.. studies.Select(study => study.Name)];

    /// <summary>Fails unless the study concludes as expected and says why in the expected words.</summary>
    public static void Holds(ImmutableArray<AwkwardStudy> studies, string name)
    {
        var expected = studies.Single(study => study.Name == name);
        var before = InputQueries.Of(expected.Study.Inputs);
        var stops = before.Any(query => query.Severity == Severity.Stop);
        var analysis = stops ? null : expected.Study.Analyze();

        Assert.Equal(expected.Conclusions, analysis is null ? "Stop" : Conclusions(analysis));
        ImmutableArray<(string Code, string Text)> said = analysis is null
            ? [.. before.Select(Saying)]
            : Said(analysis);
        Assert.Contains(
            said,
            item =>
                item.Code == expected.Code
                && item.Text.Contains(expected.Words, StringComparison.Ordinal)
        );
        if (expected.Silent is { } silent)
        {
            Assert.DoesNotContain(said, item => item.Code == silent);
        }

        if (expected.WindowHours is { } hours)
        {
            Assert.Equal(hours, analysis!.Sequences[0].Window!.Time.TotalHours);
        }
    }

    /// <summary>Gives the first so many specimens the result at the hour.</summary>
    public static SmallStudy First(this SmallStudy study, int count, int hour, string text) =>
        Enumerable.Range(0, count).Aggregate(study, (made, i) => made.Result(i, hour, text));

    /// <summary>Documents exclusions of the first so many specimens at 6 h.</summary>
    public static SmallStudy ExcludeFirst(this SmallStudy study, int count) =>
        Enumerable.Range(0, count).Aggregate(study, (made, i) => made.Exclude(i, 6));

    /// <summary>Changes every tube of the delays.</summary>
    public static SmallStudy Delayed(this SmallStudy study, Func<TubeRow, TubeRow> change) =>
        study.Tubes(tube =>
            tube.Tube.EndsWith("-0", StringComparison.Ordinal) ? tube : change(tube)
        );

    /// <summary>Collects the specimens on so many days in place of ten.</summary>
    public static SmallStudy OnDays(this SmallStudy study, int days) =>
        study
            .Tubes(tube =>
                tube with
                {
                    CollectedAt = tube.CollectedAt.AddDays(Back(tube.CollectedAt, days)),
                    SpunAt = tube.SpunAt?.AddDays(Back(tube.CollectedAt, days)),
                }
            )
            .Rows(row =>
                row with
                {
                    TestedAt = row.TestedAt?.AddDays(Back(row.TestedAt.Value, days)),
                }
            );

    /// <summary>So many specimens with baselines of 40.0 s, and delayed results in turn.</summary>
    public static SmallStudy InTurn(int specimens, params string[] delayed) =>
        SmallStudy.Of(
            [6],
            Enumerable.Range(0, specimens).Select(i => "40.0 | " + delayed[i % delayed.Length])
        );

    private static int Back(DateTimeOffset at, int days) => (at.Day - 2) % days - (at.Day - 2);

    private static string Conclusions(StudyAnalysis analysis) =>
        string.Join(
            ", ",
            analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .Select(cell => cell.Conclusion.ToString())
        );

    private static (string Code, string Text) Saying(DataQuery query) =>
        (query.Code, query.Message + " " + query.Action);

    private static ImmutableArray<(string Code, string Text)> Said(StudyAnalysis analysis) =>
        [
            .. analysis.Queries.Select(Saying),
            .. analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .SelectMany(cell =>
                    cell.Doubts.Concat(cell.Criteria.SelectMany(result => result.Reasons))
                )
                .Select(reason => (reason.Name(), ReasonWords.Of(reason))),
        ];
}
