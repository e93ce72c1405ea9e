using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Planning;

/// <summary>How results are drawn, and what is read from results so drawn: 6,000 of them on 600 days, so that chance leaves a few hundredths.</summary>
public sealed class SupposedFromResultsTests
{
    private const double Cv = 2.5;
    private const double RunSd = 2;

    /// <summary>The stated CV is 2.5 % between runs, of which runs have 2 %: 1.5 % are left for a repeat.</summary>
    private const double RepeatCv = 1.5;

    private static readonly SupposedResults s_supposed = new(
        SupposedConduct.Even(6000, 600),
        false,
        300,
        0.15,
        3,
        RepeatCv,
        RunSd
    );

    /// <summary>Counted from the baseline or from collection, and with a mean that makes the errors of delayed results larger.</summary>
    [Theory]
    [InlineData(ChangeOrigin.Baseline, 0)]
    [InlineData(ChangeOrigin.Baseline, 12)]
    [InlineData(ChangeOrigin.Collection, 12)]
    [InlineData(ChangeOrigin.Collection, -12)]
    public void What_results_were_drawn_from_is_found_in_them(ChangeOrigin since, double mean)
    {
        var found = SupposedFromResults
            .Of(Draw(s_supposed, since, mean), Context(since))
            .Value!.Found;

        Assert.Equal(s_supposed.SpecimenSdPercent, found.SpecimenSdPercent, 0.12);
        Assert.Equal(s_supposed.RepeatCvPercent, found.RepeatCvPercent, 0.12);
        Assert.Equal(s_supposed.RunSdPercent, found.RunSdPercent, 0.1);
        Assert.Equal(s_supposed.BaselineLogSd, found.BaselineLogSd, 0.005);
    }

    /// <summary>
    /// To first order the variance of a change is that of the specimens and twice that of one result, days share twice that of a run, and what the baseline's error adds to its logarithm it takes from the change:
    /// their covariance is −(repeat² + run²). True baselines are all alike here.
    /// </summary>
    [Fact]
    public void Both_results_have_errors_of_their_own()
    {
        var pairs = Draw(s_supposed with { BaselineLogSd = 0 }, ChangeOrigin.Baseline, 0);
        double[] changes = [.. pairs.Select(pair => pair.ChangePercent!.Value)];
        double[] logs = [.. pairs.Select(pair => 100 * Math.Log((double)pair.Values().Baseline))];
        var variance = Spread.Summarize(changes).Value!.StandardDeviation;
        var days = ClusterVariation
            .Compute(changes, Context(ChangeOrigin.Baseline).DataOf(pairs).Errors.Days)
            .Value!;

        Assert.Equal(Math.Sqrt(9 + (2 * Cv * Cv)), variance, 0.15);
        Assert.Equal(Math.Sqrt(2) * RunSd, days.SharedStandardDeviation, 0.2);
        Assert.Equal(-Cv * Cv, Covariance(logs, changes), 0.8);
    }

    [Fact]
    public void In_one_run_its_error_cancels_and_nothing_is_left_for_days()
    {
        var inOneRun = s_supposed with { SameRun = true };
        var spread = SupposedFromResults
            .Of(Draw(inOneRun, ChangeOrigin.Baseline, 0), Context(ChangeOrigin.Baseline))
            .Value!;

        Assert.True(spread.Found.SameRun);
        Assert.Equal(0, spread.Found.RunSdPercent);
        Assert.Equal(0, spread.AtBound.RunSdPercent);
        Assert.Equal(Math.Sqrt(9 + (2 * RepeatCv * RepeatCv)), spread.Found.TotalSdPercent, 0.12);
    }

    /// <summary>A stated CV larger than all of the spread can have no more than the spread; nothing is left for specimens.</summary>
    [Fact]
    public void A_stated_imprecision_takes_no_more_than_the_spread_found()
    {
        var context = Context(ChangeOrigin.Baseline);
        var found = SupposedFromResults
            .Of(
                Draw(s_supposed, ChangeOrigin.Baseline, 0),
                context with
                {
                    Analyte = context.Analyte with { BetweenRunCvPercent = 40 },
                }
            )
            .Value!.Found;

        Assert.Equal(0, found.SpecimenSdPercent, 6);
        Assert.Equal(Math.Sqrt(9 + (2 * Cv * Cv)), found.TotalSdPercent, 0.15);
    }

    /// <summary>The delayed tubes of two days were saved up for one run: 2 runs for 4 days, and drawn so again.</summary>
    [Fact]
    public void Days_and_runs_are_drawn_as_they_were()
    {
        int[] day = [0, 0, 0, 0, 0, 1, 2, 2, 3, 3, 3];
        var first = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        var context = Context(ChangeOrigin.Baseline);
        ImmutableArray<PairRecord> pairs =
        [
            .. Draw(s_supposed, ChangeOrigin.Baseline, 0)
                .Take(day.Length)
                .Select(
                    (pair, i) =>
                        pair with
                        {
                            Collected = pair.Collected with { At = first.AddDays(day[i]) },
                            Baseline = pair.Baseline! with
                            {
                                Conditions = TestConditions.OfRun($"B{day[i]}"),
                            },
                            Delayed = pair.Delayed! with
                            {
                                Conditions = TestConditions.OfRun($"D{day[i] / 2}"),
                            },
                        }
                ),
        ];

        var again = CriterionSetCharacteristic.Draw(
            context,
            [context.TimePoint],
            SupposedFromResults.Of(pairs, context).Value!.Found,
            0,
            new SeededRandom(1)
        )[0];

        var errors = context.DataOf(again).Errors;
        Assert.Equal(day, errors.Days.Cluster);
        Assert.Equal(day, errors.BaselineRuns.Cluster);
        Assert.Equal(day.Select(item => item / 2), errors.DelayedRuns.Cluster);
    }

    [Fact]
    public void Every_bound_lies_above_what_was_found()
    {
        var spread = SupposedFromResults
            .Of(
                Draw(
                    s_supposed with
                    {
                        Conduct = SupposedConduct.Even(40, 5),
                    },
                    ChangeOrigin.Baseline,
                    0
                ),
                Context(ChangeOrigin.Baseline)
            )
            .Value!;

        Assert.True(spread.AtBound.RunSdPercent > spread.Found.RunSdPercent);
        Assert.True(spread.AtBound.SpecimenSdPercent > spread.Found.SpecimenSdPercent);
        Assert.Equal(spread.Found.RepeatCvPercent, spread.AtBound.RepeatCvPercent);
    }

    private static ImmutableArray<PairRecord> Draw(
        SupposedResults supposed,
        ChangeOrigin since,
        double mean
    ) =>
        CriterionSetCharacteristic.Draw(
            Context(since),
            [Context(since).TimePoint],
            supposed,
            mean,
            new SeededRandom(2026)
        )[0];

    private static CellContext Context(ChangeOrigin since)
    {
        var protocol = SmallProtocol.For(40, 6) with { ChangeSince = since };
        return new(
            protocol,
            protocol.Analytes[0] with
            {
                BetweenRunCvPercent = 2.5m,
            },
            protocol.Groups[0],
            protocol.Storages[0],
            protocol.TimePoints[0],
            []
        );
    }

    private static double Covariance(double[] first, double[] second)
    {
        var (a, b) = (first.Average(), second.Average());
        return first.Zip(second, (x, y) => (x - a) * (y - b)).Sum() / (first.Length - 1);
    }
}
