using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// The true change at every level is the allowable bias of 7.5 %. Both results have a CV of 2 %; the specimen's own
/// change adds as much again to the delayed one, so the right ratio of variances is 0.5.
/// </summary>
internal static class LevelScenarios
{
    private const double Cv = 0.02;
    private const decimal CvPercent = 2;

    /// <summary>The jackknife fits a line for each specimen left out.</summary>
    private const int WorkOfJackknife = 4;

    public static IEnumerable<Scenario> All =>
        MeanScenarios.Sizes.SelectMany(n =>
            new[]
            {
                At(50, n, ChangeShape.Normal),
                At(65, n, ChangeShape.Normal),
                At(65, n, ChangeShape.Skewed),
                At(65, n, ChangeShape.VerySkewed),
                At(65, n, ChangeShape.HeavyTails),
                WrongRatio(n),
                Rounded(n),
                SharedRuns(n, 5),
                SharedRuns(n, 10),
                NarrowGroup(n),
            }
        );

    /// <summary>Baselines around 50 s with an SD of a quarter: 65 s has one in seven above it.</summary>
    public static Scenario At(decimal level, int specimens, ChangeShape shape) =>
        new Results(level, shape, Collection.On(5, specimens)).Scenario(
            FormattableString.Invariant($"{shape.Name}; level {level} s")
        );

    public static Scenario WrongRatio(int specimens) =>
        (new Results(65, ChangeShape.Normal, Collection.On(5, specimens)) { Ratio = 1 }).Scenario(
            "normal; level 65 s, ratio of variances 1 where 0.5 is right"
        );

    public static Scenario SharedRuns(int specimens, int days) =>
        (
            new Results(65, ChangeShape.Normal, Collection.On(days, specimens)) { RunSd = 0.01 }
        ).Scenario($"shared runs of SD 1 %; level 65 s; {days} days");

    /// <summary>INR under a vitamin K antagonist.</summary>
    public static Scenario Rounded(int specimens) =>
        (
            new Results(3, ChangeShape.Normal, Collection.On(5, specimens))
            {
                Center = 2.5,
                Decimals = 1,
            }
        ).Scenario("INR reported to 0.1; level 3.0");

    /// <summary>Baselines that spread by less than five times the imprecision: measurement error bends the line.</summary>
    public static Scenario NarrowGroup(int specimens) =>
        (
            new Results(55, ChangeShape.Normal, Collection.On(5, specimens)) { Spread = 0.08 }
        ).Scenario("normal; level 55 s, baselines spread by 8 % only");

    private sealed record Results(decimal Level, ChangeShape Shape, Collection Collection)
    {
        public double Center { get; init; } = 50;

        public double Spread { get; init; } = 0.25;

        public double RunSd { get; init; }

        public int Decimals { get; init; } = SimulatedPairs.Unrounded;

        public decimal Ratio { get; init; } = 0.5m;

        public Scenario Scenario(string data)
        {
            var study = SimulatedStudy
                .Of(
                    [SmallProtocol.Bias],
                    new DecisionLevelCriterion("levels", [new("aPTT", "bias")], [], 0.90, [Level])
                )
                .Analyte(analyte =>
                    analyte with
                    {
                        BetweenRunCvPercent = CvPercent,
                        ErrorVarianceRatio = Ratio,
                        Decimals = Decimals,
                    }
                );
            return new(
                "Change predicted at a decision level",
                data,
                Collection.Day.Length,
                Reading.Controlled,
                random => study.Supports(Draw(random))
            )
            {
                Work = WorkOfJackknife,
            };
        }

        private ImmutableArray<PairRecord> Draw(SeededRandom random)
        {
            var first = Collection.Shifts(random, RunSd);
            var second = Collection.Shifts(random, RunSd);
            var pairs = ImmutableArray.CreateBuilder<PairRecord>(Collection.Day.Length);
            for (var i = 0; i < Collection.Day.Length; i++)
            {
                var day = Collection.Day[i];
                var level = Center * Math.Exp(Spread * random.NextNormal());
                var error = Math.Sqrt(2) * Cv * Shape.Draw(random);
                pairs.Add(
                    SimulatedPairs.Compared(
                        i,
                        level * (1 + first[day] + (Cv * random.NextNormal())),
                        1.075 * level * (1 + second[day] + error),
                        Collection,
                        Decimals
                    )
                );
            }

            return pairs.MoveToImmutable();
        }
    }
}
