using System.Text.RegularExpressions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Reads the page as a person with a pocket calculator would, and compares what comes out with what the statistics decided by.</summary>
public sealed partial class HandCheckTests
{
    public static TheoryData<string, ChangeScale> Cases
    {
        get
        {
            var data = new TheoryData<string, ChangeScale>();
            foreach (var name in new[] { "40 pairs", "200 pairs", "two analytes in two groups" })
            {
                data.Add(name, ChangeScale.Percent);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Listed_changes_give_the_interval_that_decided(string name, ChangeScale scale)
    {
        var analysis = OddStudies.All[name];
        var cell = Decided(analysis);
        var bias = cell.Criteria.OfType<BiasResult>().First();
        Assert.Equal(scale, bias.Scale);
        var mean = bias.Readings[0].Mean.Value!;
        var tables = Tables(HandCheckSection.Of(analysis));
        var changes = tables[0].Rows.Select(row => Numbers(row.Cells[1].Text)).ToArray();
        var all = changes.SelectMany(day => day).ToArray();
        var days = changes.Select(day => day.Average()).ToArray();

        Assert.Equal(mean.BySpecimen.Count, all.Length);
        Require(mean.BySpecimen.Lower, mean.BySpecimen.Upper, all, ByStep(tables[1], 1));
        if (mean.ByCluster.MaxBy(item => item.Upper - item.Lower) is { } widest)
        {
            Require(widest.Lower, widest.Upper, days, ByStep(tables[1], 2));
        }

        static void Require(double lower, double upper, double[] values, double[] printed)
        {
            var center = values.Average();
            var deviation = Math.Sqrt(
                values.Sum(value => (value - center) * (value - center)) / (values.Length - 1)
            );
            var error = deviation / Math.Sqrt(values.Length);
            var t = printed[0];

            // Changes are listed to 0.001 and t to 0.001.
            Assert.Equal(lower, center - (t * error), 0.003);
            Assert.Equal(upper, center + (t * error), 0.003);
            Assert.Equal(lower, printed[1], 0.003);
            Assert.Equal(upper, printed[2], 0.003);
        }
    }

    /// <summary>0.85⁴⁰ + 40·0.15·0.85³⁹ = 0.0121, worked out apart.</summary>
    [Fact]
    public void The_chance_behind_the_exact_bound_is_written_out()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = Decided(analysis);
        var individual = cell.Criteria.OfType<IndividualResult>().First();
        var table = Tables(HandCheckSection.Of(analysis))
            .Single(item => item.Caption.StartsWith("Single specimens", StringComparison.Ordinal));
        var chance = table.Rows.Single(row =>
            row.Cells[0].Text.StartsWith("Chance", StringComparison.Ordinal)
        );
        var (n, outside) = (individual.Agreement.Counted, individual.Agreement.Outside);
        var expected = Enumerable
            .Range(0, outside + 1)
            .Sum(i =>
                Enumerable.Range(0, i).Aggregate(1.0, (ways, j) => ways * (n - j) / (j + 1))
                * Math.Pow(0.15, i)
                * Math.Pow(0.85, n - i)
            );

        Assert.StartsWith(
            expected.ToString("0.0000", CultureInfo.InvariantCulture),
            chance.Cells[1].Text,
            StringComparison.Ordinal
        );
        Assert.Equal(
            individual.Verdict == Verdict.Met,
            chance.Cells[1].Text.Contains("at most", StringComparison.Ordinal)
        );
    }

    /// <summary>22 of 22 inside: 0.85²² = 0.0280, which is above 0.025 and not above 0.03; 0.85²⁹ = 0.0090 above 0.005.</summary>
    [Theory]
    [InlineData(0.975, 22, "0.0280, above 0.025")]
    [InlineData(0.995, 29, "0.0090, above 0.005")]
    [InlineData(0.95, 19, "0.0456, at most 0.05")]
    public void The_chance_is_held_against_all_digits_of_the_level(
        double confidence,
        int counted,
        string expected
    )
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = Decided(analysis);
        var individual = cell.Criteria.OfType<IndividualResult>().First();
        var table = HandCount.Of(
            individual with
            {
                ConfidenceLevel = confidence,
                Agreement = new AgreementCount(counted, counted, 0, 0, 0, []),
            },
            cell,
            SequenceNames.Of(analysis, analysis.Sequences[0])
        );

        Assert.Contains(table.Rows, row => row.Cells[1].Text == expected);
    }

    [Fact]
    public void Every_conclusion_leads_to_its_specimens_and_their_lines()
    {
        foreach (var analysis in OddStudies.All.Values)
        {
            var table = Tables(HandCheckSection.Of(analysis))[^1];
            var cells = analysis.Sequences.SelectMany(sequence => sequence.Cells).ToArray();
            var rows = table.Rows.Where(row => row.Kind == RowKind.Data).ToArray();

            Assert.Equal(
                cells.Select(cell => TradeWords.Of(cell.Conclusion)),
                rows.Select(row => row.Cells[1].Text)
            );
            foreach (var (cell, row) in cells.Zip(rows))
            {
                var outside = cell
                    .Criteria.OfType<IndividualResult>()
                    .SelectMany(result => result.Agreement.OutsideSpecimens)
                    .Distinct()
                    .ToArray();
                if (outside.Length is > 0 and <= 12)
                {
                    Assert.All(
                        outside,
                        specimen =>
                            Assert.Contains(specimen, row.Cells[3].Text, StringComparison.Ordinal)
                    );
                }
            }
        }
    }

    [Fact]
    public void Other_scales_are_worked_out_as_they_are_defined()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = Decided(analysis);
        var bias = cell.Criteria.OfType<BiasResult>().First();
        var pair = cell.Pairs.First(item => item.IsOfNumbers);
        var (x, y) = pair.Values();
        var limit = new Limit("both", 10m, 2m, "invented");

        Assert.Equal(y - x, Of(ChangeScale.Absolute));
        Assert.Equal(
            Math.Round(100 * Math.Log((double)(y / x)), 3),
            (double)Of(ChangeScale.LogRatio),
            0.0011
        );
        Assert.Equal(
            Math.Round((y - x) / Math.Max(2m, x / 10), 3, MidpointRounding.AwayFromZero),
            Of(ChangeScale.Share)
        );

        decimal Of(ChangeScale scale) =>
            HandChange.Of(pair, bias with { Scale = scale, Limit = limit });
    }

    private static Core.Analysis.Cell Decided(Core.Analysis.StudyAnalysis analysis) =>
        analysis
            .Sequences.SelectMany(sequence =>
                sequence.Cells.Where(cell => sequence.Window?.Planned == cell.Key.TimePoint)
            )
            .Concat(analysis.Sequences.SelectMany(sequence => sequence.Cells))
            .First();

    private static Table[] Tables(Section section) =>
        [
            .. section
                .Blocks.SelectMany(block =>
                    block is KeepTogether kept ? kept.Blocks.AsEnumerable() : [block]
                )
                .OfType<Table>(),
        ];

    /// <summary>t and the two ends, from the last two lines of a column.</summary>
    private static double[] ByStep(Table table, int column) =>
        [
            .. Numbers(table.Rows[^2].Cells[column].Text),
            .. Numbers(table.Rows[^1].Cells[column].Text),
        ];

    private static double[] Numbers(string text) =>
        [
            .. Signed()
                .Matches(text.Replace('−', '-'))
                .Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture)),
        ];

    [GeneratedRegex(@"(?<![\w-])[+-]?\d+\.\d+", RegexOptions.None, 1000)]
    private static partial Regex Signed();
}
