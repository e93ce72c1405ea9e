using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Core.Tests.Planning;

/// <summary>
/// What plan supposes of a protocol, against what analyze --simulate finds in results of that very kind: forty specimens on ten days, results whose changes have by analysis of variance exactly the
/// planned spread between days and within them. Both then state the chance of supported for the same true changes: none, half of the limit of 7.5 %, all of it.
/// </summary>
[Trait("lane", "slow")]
public sealed class PlanAgainstResultsTests
{
    private const int Days = 10;
    private const int SpecimensOfDay = 4;
    private const int Specimens = Days * SpecimensOfDay;
    private const double Lowest = 45;
    private const double Highest = 60;
    private static readonly int s_studies = LongProof.Setting("PLANNED_STUDIES", 400);

    [Theory]
    [InlineData(3, 2)]
    [InlineData(6, 2)]
    [InlineData(2, 3)]
    public void Both_give_the_same_chances(double specimenSd, double cv)
    {
        var study = OfKind(specimenSd, cv);

        var planned = StudyPlanner
            .Of(study.Inputs.Protocol, new(s_studies, 1) { Detail = false })
            .Rows[0]
            .TimePoints[0];
        var found = StudyPower.Of(study.Analyze(), s_studies, seed: 2).TimePoints[0].Power.Value!;

        Assert.Equal(cv / Math.Sqrt(2), found.Supposed.Found.RunSdPercent, 1);
        Assert.Equal(cv / Math.Sqrt(2), found.Supposed.Found.RepeatCvPercent, 1);
        Assert.Equal(specimenSd, found.Supposed.Found.SpecimenSdPercent, 1);
        Assert.Equal([0, 3.75, 7.5], found.Points.Select(point => point.MeanChangePercent));
        Assert.Equal([0, 3.75, 7.5], planned.Chances.Select(point => point.MeanChangePercent));
        foreach (var (chance, point) in planned.Chances.Zip(found.Points))
        {
            var (p, q) = (chance.Together, point.Together);
            var pooled = (double)(p.Accepted + q.Accepted) / (p.Studies + q.Studies);
            var error = Math.Sqrt(pooled * (1 - pooled) * ((1.0 / p.Studies) + (1.0 / q.Studies)));
            Assert.InRange(p.Probability, q.Probability - (3 * error), q.Probability + (3 * error));
        }
    }

    /// <summary>Results with a mean change of half the limit. The scores are normal quantiles, scaled so that the mean squares between and within days are those that are planned.</summary>
    private static SmallStudy OfKind(double specimenSd, double cv)
    {
        var (low, high) = (45m, 60m);
        const double mean = 3.75;
        var quotient = 1 + (mean / 100);
        var half = cv * cv / 2;
        var within = (specimenSd * specimenSd) + (2 * quotient * quotient * half);
        var shared = 2 * quotient * quotient * half;
        var ofDays = Scores(Days, Math.Sqrt(shared + (within / SpecimensOfDay)));

        // Four scores of each day that add up to nothing: their mean square is that within days.
        double[] pattern = [-1.5, -0.5, 0.5, 1.5];
        var scale = Math.Sqrt(within * (SpecimensOfDay - 1) / pattern.Sum(value => value * value));
        var logs = Scores(Specimens, Math.Log(Highest / Lowest) / 3.29);
        return SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, Specimens)
                    .Select(i =>
                    {
                        var (day, place) = (i % Days, i / Days);

                        // Neighbors in the order of days have baselines far apart.
                        var x = Math.Round(
                            Math.Sqrt(Lowest * Highest) * Math.Exp(logs[i * 17 % Specimens]),
                            3
                        );
                        var change =
                            mean + ofDays[day] + (scale * pattern[(place + day) % SpecimensOfDay]);
                        return $"{SmallRows.Text((decimal)x)} | {SmallRows.Text((decimal)Math.Round(x * (1 + (change / 100)), 3))}";
                    })
            )
            .Analyte(analyte =>
                analyte with
                {
                    Decimals = 3,
                    BetweenRunCvPercent = (decimal)cv,
                    PlannedRanges = [new("none", low, high)],
                    ExpectedChanges =
                    [
                        new(
                            "none",
                            SmallProtocol.At(6),
                            7.5m,
                            "invented",
                            null,
                            ChanceOfSupport.Doubtful
                        )
                        {
                            SpecimenSdPercent = (decimal)specimenSd,
                        },
                    ],
                }
            )
            .Protocol(protocol => protocol with { PlannedDays = Days });
    }

    /// <summary>Quantiles of a normal distribution with mean 0, scaled to an SD.</summary>
    private static double[] Scores(int count, double sd)
    {
        double[] scores =
        [
            .. Enumerable
                .Range(1, count)
                .Select(i => Normal.Quantile((i - 0.375) / (count + 0.25))),
        ];
        var found = Math.Sqrt(scores.Sum(score => score * score) / (count - 1));
        return [.. scores.Select(score => sd * score / found)];
    }
}
