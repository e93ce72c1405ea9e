using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>The main figures of the example against an R script that reads the same raw files and shares no code or rule with the program.</summary>
public sealed class ReferenceTests
{
    private const double RelativeTolerance = 1e-9;

    private static readonly ImmutableArray<ImmutableDictionary<string, string>> s_reference =
        Read();
    private static readonly AnalyzedStudy s_study = ExampleStudy.Analyze(ExampleStudy.Bytes);

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

    private static Dictionary<string, double> Figures(Cell cell)
    {
        var bias = cell.Criteria.OfType<BiasResult>().Single();
        var individual = cell.Criteria.OfType<IndividualResult>().Single();
        var mean = bias.Mean.Value!;
        var byDay = mean.ByCluster.Value!;
        var bounds = individual.Bounds.Value!;
        var estimates = cell.Estimates;
        return new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["compared"] = estimates.Compared,
            ["days"] = mean.ClusterCount,
            ["failed"] = individual.Agreement.Failed,
            ["inside"] = individual.Agreement.Inside,
            ["counted"] = individual.Agreement.Counted,
            ["mean_percent"] = mean.Mean,
            ["sd_percent"] = estimates.SpreadPercent.Value!.StandardDeviation,
            ["by_specimen_lower"] = mean.BySpecimen.Lower,
            ["by_specimen_upper"] = mean.BySpecimen.Upper,
            ["by_day_lower"] = byDay.Lower,
            ["by_day_upper"] = byDay.Upper,
            ["share_lower"] = bounds.OneSidedLower,
            ["share_upper"] = bounds.OneSidedUpper,
            ["hodges_lehmann_percent"] = estimates.HodgesLehmannPercent.Value!.Value,
            ["median_percent"] = estimates.MedianPercent.Value!.Value,
            ["agreement_percent_lower"] = estimates.AgreementPercent.Value!.Lower,
            ["agreement_percent_upper"] = estimates.AgreementPercent.Value!.Upper,
            ["mean_seconds"] = estimates.MeanAbsolute.Value!.Mean,
            ["agreement_seconds_lower"] = estimates.AgreementAbsolute.Value!.Lower,
            ["agreement_seconds_upper"] = estimates.AgreementAbsolute.Value!.Upper,
        };
    }

    private static ImmutableArray<ImmutableDictionary<string, string>> Read()
    {
        var lines = File.ReadAllLines(
            Path.Combine(RepositoryFile.Root, "tests/ReferenceData/computed/example_study.csv")
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
