using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// The true mean change is the allowable bias, and all results of a day share what their run adds: SD 1 % a run, 3 %
/// among specimens.
/// </summary>
internal static class RunScenarios
{
    public const double RunSd = 1;

    private const string Section = "Mean change, results of a day in shared runs";

    public static IEnumerable<Scenario> All =>
        [
            .. new[] { 1, 2, 5, 10 }.SelectMany(days =>
                new[] { Tool(Collection.On(days, 40)), SpecimensAlone(Collection.On(days, 40)) }
            ),
            .. new[] { 2, 3 }.Select(days => FewerDaysAllowed(Collection.On(days, 40))),
            .. new[] { 5, 10, 20, 80 }.Select(n => Tool(Collection.On(5, n))),
            Tool(Collection.Lopsided(40)),
        ];

    public static Scenario Tool(Collection collection) =>
        Of(collection, collection.Name, SimulatedStudy.OfMean);

    /// <summary>What the same data would claim were a run's error thought to average out over specimens.</summary>
    public static Scenario SpecimensAlone(Collection collection)
    {
        var cell = Cell(collection);
        return new(
            Section,
            $"{collection.Name}; by specimens alone, which is not the rule",
            collection.Day.Length,
            Reading.NotControlled,
            random =>
                SimulatedStudy.OfMean.Criteria(cell.Draw(random))[0] is BiasResult result
                && result.Mean.TryGet(out var mean)
                && mean.BySpecimen.Upper < MeanScenarios.Limit
        );
    }

    private static Scenario FewerDaysAllowed(Collection collection) =>
        Of(
            collection,
            collection.Name + ", as many as the protocol asks for",
            new(SimulatedStudy.OfMean.Protocol with { MinimumDays = collection.Days })
        );

    private static SimulatedCell Cell(Collection collection) =>
        new(collection, MeanScenarios.Limit, MeanScenarios.ChangeSd, ChangeShape.Normal)
        {
            RunSdPercent = RunSd,
        };

    private static Scenario Of(Collection collection, string data, SimulatedStudy study)
    {
        var cell = Cell(collection);
        return new(
            Section,
            data,
            collection.Day.Length,
            Reading.Controlled,
            random => study.Supports(cell.Draw(random))
        );
    }
}
