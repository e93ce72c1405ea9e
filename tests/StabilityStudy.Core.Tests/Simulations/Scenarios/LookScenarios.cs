using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Twenty specimens, and twenty more each time the answer is inconclusive: the true mean change is the allowable bias.</summary>
internal static class LookScenarios
{
    private const int Step = 20;

    public static IEnumerable<Scenario> All =>
        [Looks(1, 0.90), Looks(2, 0.90), Looks(5, 0.90), Looks(2, 0.95)];

    public static Scenario Looks(int most, double confidence)
    {
        var study = SimulatedStudy.Of(
            [SmallProtocol.Bias],
            SmallProtocol.MeanCriterion with
            {
                ConfidenceLevel = confidence,
            }
        );
        var cell = new SimulatedCell(
            Collection.InOneRun(most * Step),
            MeanScenarios.Limit,
            MeanScenarios.ChangeSd,
            ChangeShape.Normal
        );
        return new(
            "Looking again with more specimens after inconclusive",
            FormattableString.Invariant(
                $"{(most == 1 ? "one look" : $"up to {most} looks")}, each with an interval of {100 * confidence:0} %; pairs in one run"
            ),
            most * Step,
            most == 1 || confidence > 0.9 ? Reading.Controlled : Reading.NotControlled,
            random => Claims(study, cell.Draw(random))
        )
        {
            Work = most,
        };
    }

    private static bool Claims(SimulatedStudy study, ImmutableArray<PairRecord> pairs)
    {
        var conclusion = Conclusion.Inconclusive;
        for (var n = Step; n <= pairs.Length && conclusion == Conclusion.Inconclusive; n += Step)
        {
            conclusion = study.Conclude([pairs[..n]]);
        }

        return conclusion == Conclusion.Supported;
    }
}
