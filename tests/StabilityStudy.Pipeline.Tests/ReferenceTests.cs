using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>The main figures of the example against an R script that reads the same raw files and shares no code or rule with the program.</summary>
public sealed class ReferenceTests
{
    private const double RelativeTolerance = 1e-9;

    private static readonly ImmutableArray<ImmutableDictionary<string, string>> s_reference = Read(
        "example_study.csv"
    );
    private static readonly AnalyzedStudy s_study = ExampleStudy.Analyzed;

    public static TheoryData<string, string> Cells =>
        [.. s_reference.Select(line => (line["group"], line["time_point"]))];

    [Fact]
    public void The_reference_has_every_cell_of_the_example() =>
        Assert.Equal(
            s_study
                .Analysis.Sequences.SelectMany(sequence => sequence.Cells)
                .Select(cell => (cell.Key.Group, cell.Key.TimePoint.ToString())),
            s_reference.Select(line => (line["group"], line["time_point"]))
        );

    [Theory]
    [MemberData(nameof(Cells))]
    public void Every_main_figure_agrees_with_R(string group, string timePoint)
    {
        var expected = s_reference.Single(line =>
            line["group"] == group && line["time_point"] == timePoint
        );
        var actual = Figures(
            s_study
                .Analysis.Sequences.SelectMany(sequence => sequence.Cells)
                .Single(cell =>
                    cell.Key.Group == group && cell.Key.TimePoint.ToString() == timePoint
                )
        );

        Assert.Equal(expected.Count - 2, actual.Count);
        Assert.All(
            actual,
            figure =>
            {
                var reference = double.Parse(expected[figure.Key], CultureInfo.InvariantCulture);
                Assert.True(
                    Math.Abs(figure.Value - reference) <= RelativeTolerance * Math.Abs(reference),
                    FormattableString.Invariant($"{figure.Key}: {figure.Value:R}, R {reference:R}")
                );
            }
        );
    }

    /// <summary>nlme stops beside the boundary, where the first group lies; its likelihood is never above ours.</summary>
    [Theory]
    [InlineData("none", 1e-3)]
    [InlineData("ufh", 1e-5)]
    public void The_drift_by_a_mixed_model_agrees_with_nlme(string group, double tolerance)
    {
        var expected = Read("example_drift.csv").Single(line => line["group"] == group);
        double Expected(string name) => double.Parse(expected[name], CultureInfo.InvariantCulture);
        var fit = s_study
            .Analysis.Sequences.Single(sequence => sequence.Group == group)
            .Drift.Mixed.Single(mixed => mixed.IsDeclared)
            .Fit.Value!;

        Assert.Equal(Expected("results"), fit.ResultCount);
        Assert.InRange(fit.Slope / Expected("slope"), 1 - tolerance, 1 + tolerance);
        Assert.InRange(
            fit.SlopeStandardError / Expected("slope_se"),
            1 - (10 * tolerance),
            1 + (10 * tolerance)
        );
        Assert.InRange(fit.RestrictedLogLikelihood - Expected("loglik"), -1e-7, 0.01);
    }

    private static Dictionary<string, double> Figures(Cell cell)
    {
        var bias = cell.Criteria.OfType<BiasResult>().Single();
        var individual = cell.Criteria.OfType<IndividualResult>().Single();
        var mean = bias.Readings[0].Mean.Value!;
        var byDay = mean.Over(IntervalSource.CollectionDays)!;
        var bridged = bias
            .Readings.Single(item => item.Reading == ChangeReading.RunsBridged)
            .Mean.Value!;
        var agreement = individual.Readings[0].Agreement;
        var bounds = ClopperPearson.Bounds(agreement.Inside, agreement.Counted, 0.95);
        var estimates = cell.Estimates;
        var further = estimates.Further;
        return new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["compared"] = estimates.Compared,
            ["days"] = byDay.Clusters,
            ["failed"] = agreement.Failed,
            ["inside"] = agreement.Inside,
            ["counted"] = agreement.Counted,
            ["mean_percent"] = mean.Mean,
            ["sd_percent"] = estimates.SpreadPercent.Value!.StandardDeviation,
            ["by_specimen_lower"] = mean.BySpecimen.Lower,
            ["by_specimen_upper"] = mean.BySpecimen.Upper,
            ["by_day_lower"] = byDay.Lower,
            ["by_day_upper"] = byDay.Upper,
            ["hull_lower"] = mean.Lower,
            ["hull_upper"] = mean.Upper,
            ["bridged_mean"] = bridged.Mean,
            ["bridged_lower"] = bridged.Lower,
            ["bridged_upper"] = bridged.Upper,
            ["share_lower"] = bounds.OneSidedLower,
            ["share_upper"] = bounds.OneSidedUpper,
            ["hodges_lehmann_percent"] = estimates.HodgesLehmannPercent.Value!.Value,
            ["median_percent"] = estimates.MedianPercent.Value!.Value,
            ["agreement_percent_lower"] = estimates.AgreementPercent.Value!.Lower,
            ["agreement_percent_upper"] = estimates.AgreementPercent.Value!.Upper,
            ["percentile_lower"] = further.PercentilesPercent.Value!.Lower,
            ["percentile_upper"] = further.PercentilesPercent.Value!.Upper,
            ["shapiro_w"] = further.NormalityPercent.Value!.W,
            ["weighted_slope"] = further.WeightedLeastSquares.Value!.Slope.Value,
            ["theil_sen"] = further.TheilSen.Value!.Slope,
            ["tau_b"] = further.Kendall.Value!.TauB,
            ["concordance"] = further.Concordance.Value!.Concordance,
            ["level_slope"] = further.LevelDependence.Value!.Slope.Value,
            ["level_lower"] = further.LevelDependence.Value!.Slope.Lower,
            ["level_upper"] = further.LevelDependence.Value!.Slope.Upper,
            ["mean_seconds"] = estimates.MeanAbsolute.Value!.Mean,
            ["agreement_seconds_lower"] = estimates.AgreementAbsolute.Value!.Lower,
            ["agreement_seconds_upper"] = estimates.AgreementAbsolute.Value!.Upper,
        };
    }

    private static ImmutableArray<ImmutableDictionary<string, string>> Read(string name)
    {
        var lines = File.ReadAllLines(
            Path.Combine(RepositoryFile.Root, "tests/ReferenceData/computed", name)
        );
        var names = lines[1].Split(',');
        return
        [
            .. lines[2..]
                .Select(line =>
                    names
                        .Zip(line.Split(','), KeyValuePair.Create)
                        .ToImmutableDictionary(StringComparer.Ordinal)
                ),
        ];
    }
}
