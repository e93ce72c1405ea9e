using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>A row that is read from a canonical file is taken for the one that was written only where it is the same in everything.</summary>
public sealed class WrittenRowsTests
{
    private static readonly (TubeRow Tube, ResultRow Result) Good = First();

    [Fact]
    public void The_same_row_is_the_one_that_was_written()
    {
        var written = new WrittenRows([Good.Tube], [Good.Result]);

        Assert.Same(Good.Tube, written.TubesFrom(0).Take(Good.Tube with { }));
        Assert.Same(Good.Result, written.ResultsFrom(0).Take(Good.Result with { }));
    }

    [Fact]
    public void A_row_behind_the_last_that_was_written_is_the_one_that_was_read()
    {
        var rows = new WrittenRows([], [Good.Result]).ResultsFrom(0);
        var (first, second) = (Good.Result with { }, Good.Result with { });

        Assert.Same(Good.Result, rows.Take(first));
        Assert.Same(second, rows.Take(second));
    }

    [Fact]
    public void Another_result_stays_the_one_that_was_read()
    {
        ResultRow[] others =
        [
            Good.Result with
            {
                SourceRow = 99,
            },
            Good.Result with
            {
                Result = new MeasuredResult("31.20", 31.20m),
            },
            Good.Result with
            {
                Remark = "second",
            },
            Good.Result with
            {
                FlagMeaning = FlagMeaning.Harmless,
            },
            Good.Result with
            {
                TestedAt = Good.Result.TestedAt!.Value.ToOffset(TimeSpan.Zero),
            },
            Good.Result with
            {
                TestedAt = null,
            },
        ];

        Assert.All(
            others,
            other =>
                Assert.Same(other, new WrittenRows([], [Good.Result]).ResultsFrom(0).Take(other))
        );
    }

    [Fact]
    public void Another_tube_stays_the_one_that_was_read()
    {
        TubeRow[] others =
        [
            Good.Tube with
            {
                Subject = "X-99",
            },
            Good.Tube with
            {
                FillPercent = Good.Tube.FillPercent!.Value * 1.0m,
            },
            Good.Tube with
            {
                HematocritPercent = null,
            },
            Good.Tube with
            {
                CollectedAt = Good.Tube.CollectedAt.ToOffset(TimeSpan.Zero),
            },
            Good.Tube with
            {
                ReceivedAt = Good.Tube.ReceivedAt!.Value.ToOffset(TimeSpan.Zero),
            },
            Good.Tube with
            {
                SpunAt = Good.Tube.SpunAt!.Value.ToOffset(TimeSpan.Zero),
            },
        ];

        Assert.All(
            others,
            other => Assert.Same(other, new WrittenRows([Good.Tube], []).TubesFrom(0).Take(other))
        );
    }

    private static (TubeRow, ResultRow) First()
    {
        Assert.True(StudyIntake.Read(GoodStudy.Bytes).TryGet(out var study));
        return (study.Inputs.Tubes[0], study.Inputs.Results[0]);
    }
}
