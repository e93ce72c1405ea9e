using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

public class RerunTests
{
    [Fact]
    public void A_rerun_beyond_the_planned_replicates_is_read_and_stays_listed()
    {
        const string first = "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,";
        var rerun = first.Replace(
            "6 h,1,2026-03-02T13:05,32.5",
            "6 h,2,2026-03-02T13:11,32.1",
            StringComparison.Ordinal
        );

        var outcome = StudyIntake.Read(
            GoodStudy.Edited("results.csv", first, first + "\n" + rerun)
        );

        Assert.True(outcome.TryGet(out var study));
        Assert.Contains(study.Inputs.Results, row => row is { Replicate: 2, Result.Text: "32.1" });
    }
}
