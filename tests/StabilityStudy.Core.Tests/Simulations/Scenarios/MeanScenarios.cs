using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>The true mean change is the allowable bias itself.</summary>
internal static class MeanScenarios
{
    public const double Limit = 7.5;
    public const double ChangeSd = 3;

    public static ImmutableArray<int> Sizes { get; } = [5, 10, 20, 40, 80];

    public static IEnumerable<Scenario> All =>
        [
            .. ChangeShape.All.SelectMany(shape =>
                Sizes.SelectMany(n =>
                    new[]
                    {
                        OfShape(shape, Collection.InOneRun(n)),
                        OfShape(shape, Collection.On(5, n)),
                    }
                )
            ),
            .. Sizes.SelectMany(n => new[] { InrOnAntagonist(n), InrNearOne(n) }),
            .. Scales(40),
            .. new[] { 3, 5, 10 }.SelectMany(cv =>
                new[]
                {
                    FallingFromNoisyBaseline(cv, ChangeScale.Percent),
                    FallingFromNoisyBaseline(cv, ChangeScale.LogRatio),
                }
            ),
            MeanOnly(40),
        ];

    public static Scenario OfShape(ChangeShape shape, Collection collection) =>
        Of(
            "Mean change, by distribution",
            $"{shape.Name}; {collection.Name}",
            Reading.Controlled,
            SimulatedStudy.OfMean,
            new(collection, Limit, ChangeSd, shape)
        );

    /// <summary>INR under a vitamin K antagonist, reported to 0.1.</summary>
    public static Scenario InrOnAntagonist(int specimens) =>
        Of(
            "Mean change, rounded results",
            "INR from 1.8 to 3.8 reported to 0.1, change SD 5.1 %; 5 days",
            Reading.Controlled,
            SimulatedStudy.OfMean.Analyte(analyte => analyte with { Decimals = 1 }),
            new(Collection.On(5, specimens), Limit, 5.1, ChangeShape.Normal)
            {
                Level = 2.6,
                LevelSpread = 0.2,
                Decimals = 1,
            }
        );

    /// <summary>INR without anticoagulant: the step of reporting is ten percent of the result.</summary>
    public static Scenario InrNearOne(int specimens) =>
        Of(
            "Mean change, rounded results",
            "INR from 0.9 to 1.2 reported to 0.1, change SD 3 %; 5 days",
            Reading.Controlled,
            SimulatedStudy.OfMean.Analyte(analyte => analyte with { Decimals = 1 }),
            new(Collection.On(5, specimens), Limit, ChangeSd, ChangeShape.Normal)
            {
                Level = 1.05,
                LevelSpread = 0.07,
                Decimals = 1,
            }
        );

    public static Scenario MeanOnly(int specimens) =>
        Of(
            "Mean change, rule on the mean alone",
            "normal; 5 days; no interval",
            Reading.NotControlled,
            SimulatedStudy.Of(
                [SmallProtocol.Bias],
                SmallProtocol.MeanCriterion with
                {
                    Rule = DecisionRule.PointOnly,
                }
            ),
            new(Collection.On(5, specimens), Limit, ChangeSd, ChangeShape.Normal)
        );

    /// <summary>The result falls by the limit; dividing by a noisy baseline moves a mean of percentages upward, away from it.</summary>
    public static Scenario FallingFromNoisyBaseline(int cvPercent, ChangeScale scale) =>
        Of(
            "Mean change, falling from a noisy baseline",
            $"between-run CV {cvPercent} %; scale {(scale == ChangeScale.Percent ? "percent" : "log-ratio")}; 5 days",
            scale == ChangeScale.LogRatio || cvPercent < 5
                ? Reading.Controlled
                : Reading.NotControlled,
            SimulatedStudy.Of(
                [SmallProtocol.Bias],
                SmallProtocol.MeanCriterion with
                {
                    Scale = scale,
                }
            ),
            new(Collection.On(5, 40), -Limit, cvPercent * (1 - (Limit / 100)), ChangeShape.Normal)
            {
                BaselineCvPercent = cvPercent,
            }
        );

    private static IEnumerable<Scenario> Scales(int specimens)
    {
        Limit amount = new("bias", null, 2.25m, "invented");
        Limit greater = new("bias", 7.5m, 0.1m, "invented");
        yield return OfScale(ChangeScale.Absolute, "absolute", amount, specimens);
        yield return OfScale(ChangeScale.Share, "share of the allowance", greater, specimens);
        yield return OfScale(ChangeScale.LogRatio, "log-ratio", greater, specimens);
    }

    private static Scenario OfScale(ChangeScale scale, string name, Limit limit, int specimens) =>
        Of(
            "Mean change, by scale",
            $"normal; {name}; 5 days",
            Reading.Controlled,
            SimulatedStudy.Of([limit], SmallProtocol.MeanCriterion with { Scale = scale }),
            new(Collection.On(5, specimens), Limit, ChangeSd, ChangeShape.Normal)
            {
                // With one level for all specimens the limit is the same on every scale.
                LevelSpread = scale == ChangeScale.Absolute ? 0 : 0.15,
            }
        );

    private static Scenario Of(
        string section,
        string data,
        Reading reading,
        SimulatedStudy study,
        SimulatedCell cell
    ) =>
        new(
            section,
            data,
            cell.Collection.Day.Length,
            reading,
            random => study.Supports(cell.Draw(random))
        );
}
