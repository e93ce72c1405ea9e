using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Doubts;

/// <summary>The first delayed test comes within twice the standard window of the analyte in the group.</summary>
public sealed class FirstTestTests
{
    private static readonly SmallStudy s_study = SmallStudy.Quiet(40, 6, 8);

    [Fact]
    public void A_first_test_within_twice_the_window_may_be_supported()
    {
        Assert.Equal(Conclusion.Supported, s_study.Cell().Conclusion);
        Assert.Equal(
            Conclusion.Supported,
            s_study
                .Analyte(analyte => analyte with { StandardWindow = Window(3) })
                .Cell()
                .Conclusion
        );
    }

    [Fact]
    public void A_first_test_beyond_twice_the_window_supports_nothing()
    {
        var study = s_study.Analyte(analyte =>
            analyte with
            {
                StandardWindow = new(TimeSpan.FromMinutes(179), "invented"),
            }
        );
        var sequence = study.Sequence();

        Assert.Equal(
            [Conclusion.Inconclusive, Conclusion.NotReached],
            sequence.Cells.Select(cell => cell.Conclusion)
        );
        Assert.Equal(
            new FirstTestTooLateReason(SmallProtocol.At(6), TimeSpan.FromMinutes(179)),
            Assert.Single(sequence.Cells[0].Doubts)
        );
        Assert.Null(sequence.Window);
    }

    [Fact]
    public void The_analyte_is_judged_by_its_own_first_test()
    {
        var study = s_study
            .Protocol(protocol =>
                protocol with
                {
                    TimePoints = [SmallProtocol.At(6), SmallProtocol.At(8)],
                }
            )
            .Analyte(analyte =>
                analyte with
                {
                    StandardWindow = Window(3),
                    TimePoints = [SmallProtocol.At(8)],
                }
            );

        Assert.Equal(Conclusion.Inconclusive, study.Cell(8).Conclusion);
    }

    [Fact]
    public void The_group_is_judged_by_its_own_window_and_its_own_first_test()
    {
        var shorter = s_study.Analyte(analyte =>
            analyte with
            {
                GroupWindows = [new GroupWindow("none", Window(1))],
            }
        );
        var earlier = s_study.Analyte(analyte =>
            analyte with
            {
                StandardWindow = Window(1),
                TimePoints = [SmallProtocol.At(8)],
                GroupWindows =
                [
                    new GroupWindow("none", Window(3)) { TimePoints = [SmallProtocol.At(6)] },
                ],
            }
        );

        Assert.Equal(Conclusion.Inconclusive, shorter.Cell().Conclusion);
        Assert.Equal(Conclusion.Supported, Assert.Single(earlier.Sequence().Cells).Conclusion);
    }

    [Fact]
    public void A_change_beyond_the_limit_stays_not_supported()
    {
        var study = SmallStudy
            .Of([6], Enumerable.Range(0, 40).Select(i => $"30.0 | 4{i % 7}.0"))
            .Analyte(analyte => analyte with { StandardWindow = Window(1) });

        Assert.Equal(Conclusion.NotSupported, study.Cell().Conclusion);
    }

    private static WindowRule Window(int hours) => new(TimeSpan.FromHours(hours), "invented");
}
