using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>
/// How often a window is called supported although the true change lies exactly at the limit. Each day has one run of
/// baselines and one run for each delay; a run shifts all its results. Seeded; margins in binomial standard errors.
/// </summary>
public sealed class ErrorRateTests
{
    private const int Studies = 2000;
    private const int Specimens = 40;
    private const double ChangeSd = 3;
    private const double RunSd = 1;
    private const double Nominal = 0.05;
    private const double StandardErrors = 3;

    private static readonly double s_margin =
        StandardErrors * Math.Sqrt(Nominal * (1 - Nominal) / Studies);

    private static readonly StudyProtocol s_protocol = SmallProtocol.For(Specimens, 6, 8, 12) with
    {
        Criteria = [SmallProtocol.MeanCriterion],
    };

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void At_the_limit_of_the_mean_few_studies_are_supported_despite_run_effects(int days)
    {
        var rate = RateOf(20260302, days, [7.5], own => own[0]);

        // An independent simulation of the same setting gave 0.046 to 0.047.
        Assert.InRange(rate, 0.046 - s_margin, 0.047 + s_margin);
    }

    [Fact]
    public void Well_inside_the_limit_most_studies_are_supported()
    {
        var rate = RateOf(20260303, 5, [4.0], own => own[0]);

        // The same independent simulation: power 0.92 to 0.97 at 3.5 points inside.
        Assert.InRange(rate, 0.92 - s_margin, 0.97 + s_margin);
    }

    [Fact]
    public void The_error_of_a_sequence_is_that_of_one_time_point()
    {
        var rate = RateOf(20260304, 5, [4.0, 7.5, 7.5], own => own[1] || own[2]);

        Assert.InRange(rate, 0, Nominal + s_margin);
    }

    [Fact]
    public void At_the_required_share_few_studies_are_supported()
    {
        var random = new Random(20260305);
        var limit = SmallProtocol.Each;
        var met = Enumerable
            .Range(0, Studies)
            .Count(_ =>
            {
                var inside = Enumerable.Range(0, Specimens).Count(_ => random.NextDouble() < 0.85);
                return IndividualEvaluation
                        .Evaluate(
                            SmallProtocol.EachCriterion,
                            limit,
                            SmallPairs.InsideAndOutside(inside, Specimens - inside),
                            minimumDays: 5,
                            sameRun: false
                        )
                        .Verdict == Verdict.Met;
            });

        // Exactly P(Bin(40, 0.85) ≥ 38) = 0.0486.
        Assert.InRange((double)met / Studies, 0.0486 - s_margin, 0.0486 + s_margin);
    }

    /// <summary>The share of studies of which the conclusions in sequence (supported or not) satisfy a condition.</summary>
    private static double RateOf(
        int seed,
        int days,
        double[] truePercent,
        Func<bool[], bool> condition
    )
    {
        var random = new Random(seed);
        var count = Enumerable
            .Range(0, Studies)
            .Count(_ =>
            {
                var baselineRuns = Runs(random, days);
                var own = truePercent
                    .Select(percent => Conclude(Cell(random, days, percent, baselineRuns)))
                    .ToImmutableArray();
                return condition([
                    .. CellEvaluation
                        .InSequence(own)
                        .Select(conclusion => conclusion == Conclusion.Supported),
                ]);
            });
        return (double)count / Studies;
    }

    private static Conclusion Conclude(ImmutableArray<PairRecord> pairs) =>
        CellEvaluation.Conclude(
            CellEvaluation.Evaluate(
                pairs,
                new CellContext(
                    s_protocol,
                    s_protocol.Analytes[0],
                    s_protocol.Groups[0],
                    s_protocol.TimePoints[0],
                    []
                )
            )
        );

    private static ImmutableArray<PairRecord> Cell(
        Random random,
        int days,
        double percent,
        double[] baselineRuns
    )
    {
        var delayedRuns = Runs(random, days);
        return
        [
            .. Enumerable
                .Range(0, Specimens)
                .Select(i =>
                {
                    var day = i % days;
                    var change =
                        percent
                        + delayedRuns[day]
                        - baselineRuns[day]
                        + (ChangeSd * Normal(random));
                    var delayed = (30 * (1 + (change / 100))).ToString(
                        "0.00000",
                        CultureInfo.InvariantCulture
                    );
                    return SmallPairs.Compared(i, "30.0", delayed, day);
                }),
        ];
    }

    private static double[] Runs(Random random, int days) =>
        [.. Enumerable.Range(0, days).Select(_ => RunSd * Normal(random))];

    /// <summary>Box and Muller (1958).</summary>
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
        * Math.Cos(2 * Math.PI * random.NextDouble());
}
