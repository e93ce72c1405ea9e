using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// The mean change from the baseline reaches the limit of 7.5 % exactly at the last planned delay, 12 h; results of 6
/// and 8 h come first. Specimens differ in how fast they change (SD 40 % of the mean), every result has an error of 2 %, and
/// that of the baseline enters every change of its specimen.
/// </summary>
internal static class DriftScenarios
{
    private const double Limit = 7.5;
    private const double SlopeSd = 0.4;
    private const double ErrorSd = 2;

    private static readonly ImmutableArray<double> s_hours = [6, 8, 12];

    public static IEnumerable<Scenario> All =>
        MeanScenarios.Sizes.SelectMany(n =>
            new[]
            {
                Of(n, ChangeShape.Normal),
                OfUnequalTimes(n),
                Of(n, ChangeShape.Skewed),
                Of(n, ChangeShape.VerySkewed),
                Of(n, ChangeShape.HeavyTails),
                Rounded(n),
                SharedRuns(n, 5),
                SharedRuns(n, 10),
                OfShapes(n, DriftShape.Linear, DriftShape.Logarithmic),
                OfShapes(n, DriftShape.Logarithmic, DriftShape.Linear),
                OfShapes(
                    n,
                    DriftShape.Linear,
                    DriftShape.Linear,
                    DriftShape.Logarithmic,
                    DriftShape.Quadratic
                ),
            }
        );

    public static Scenario Of(int specimens, ChangeShape shape) =>
        new Results(Collection.On(5, specimens), shape).Scenario(shape.Name + "; 5 days");

    /// <summary>Actual delays up to half an hour from the planned ones, and 35 % of the results not there.</summary>
    public static Scenario OfUnequalTimes(int specimens) =>
        (
            new Results(Collection.On(5, specimens), ChangeShape.Normal)
            {
                HoursAround = 0.5,
                Missing = 0.35,
            }
        ).Scenario("normal; actual delays ± 0.5 h, 35 % of results missing; 5 days");

    public static Scenario Rounded(int specimens) =>
        (
            new Results(Collection.On(5, specimens), ChangeShape.Normal)
            {
                Level = 2.6,
                Decimals = 1,
            }
        ).Scenario("INR reported to 0.1; 5 days");

    public static Scenario SharedRuns(int specimens, int days) =>
        (new Results(Collection.On(days, specimens), ChangeShape.Normal) { RunSd = 1 }).Scenario(
            $"shared runs of SD 1 %; {days} days"
        );

    public static Scenario OfShapes(
        int specimens,
        DriftShape truth,
        params ImmutableArray<DriftShape> declared
    ) =>
        (
            new Results(Collection.On(5, specimens), ChangeShape.Normal)
            {
                Truth = truth,
                Declared = declared,
            }
        ).Scenario(
            $"normal; {Name(truth)} truth, declared {string.Join(" and ", declared.Select(Name))}; 5 days",
            declared.Contains(truth) ? Reading.Controlled : Reading.NotControlled
        );

    private static string Name(DriftShape shape) => shape.ToString().ToLowerInvariant();

    private sealed record Results(Collection Collection, ChangeShape Shape)
    {
        public DriftShape Truth { get; init; } = DriftShape.Linear;

        public ImmutableArray<DriftShape> Declared { get; init; } = [DriftShape.Linear];

        public double HoursAround { get; init; }

        public double Missing { get; init; }

        public double RunSd { get; init; }

        public double Level { get; init; } = 30;

        public int Decimals { get; init; } = SimulatedPairs.Unrounded;

        public Scenario Scenario(string data, Reading reading = Reading.Controlled)
        {
            var study = SimulatedStudy
                .Of(
                    [SmallProtocol.Bias],
                    new DriftCriterion("drift", [new("aPTT", "bias")], [], 0.90, Declared)
                )
                .Analyte(analyte => analyte with { Decimals = Decimals });
            return new(
                "Change predicted by drift at the planned delay",
                data,
                Collection.Day.Length,
                reading,
                random => study.Supports(Draw(random))
            )
            {
                Work = s_hours.Length,
            };
        }

        private double Growth(double hours) =>
            SpecimenSlopes.Transform(Truth, hours)
            - SpecimenSlopes.Transform(Truth, SimulatedPairs.BaselineHours);

        private ImmutableArray<ImmutableArray<PairRecord>> Draw(SeededRandom random)
        {
            var first = Collection.Shifts(random, RunSd);
            var shifts = s_hours.Select(_ => Collection.Shifts(random, RunSd)).ToArray();
            var cells = s_hours
                .Select(_ => ImmutableArray.CreateBuilder<PairRecord>(Collection.Day.Length))
                .ToArray();
            var mean = Limit / Growth(s_hours[^1]);
            for (var i = 0; i < Collection.Day.Length; i++)
            {
                var day = Collection.Day[i];
                var level = Level * Math.Exp(0.15 * random.NextNormal());
                var slope = mean * (1 + (SlopeSd * Shape.Draw(random)));
                var atBaseline = first[day] + (ErrorSd * random.NextNormal());
                for (var j = 0; j < s_hours.Length; j++)
                {
                    var hours = s_hours[j] + (HoursAround * ((2 * random.NextDouble()) - 1));
                    var percent =
                        (slope * Growth(hours))
                        + shifts[j][day]
                        - atBaseline
                        + (ErrorSd * random.NextNormal());
                    if (random.NextDouble() >= Missing)
                    {
                        cells[j]
                            .Add(
                                SimulatedPairs.Compared(
                                    i,
                                    level,
                                    level * (1 + (percent / 100)),
                                    Collection,
                                    Decimals,
                                    hours
                                )
                            );
                    }
                }
            }

            return [.. cells.Select(cell => cell.ToImmutable())];
        }
    }
}
