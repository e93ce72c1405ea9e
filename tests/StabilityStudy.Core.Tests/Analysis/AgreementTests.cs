using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>Results that agree by chance raise no query, and those that were copied raise one a specimen, not one an analyte.</summary>
public sealed class AgreementTests
{
    private const int Specimens = 40;

    /// <summary>What is measured: a method, the step in which it is reported, and the range of its baselines.</summary>
    private sealed record Measured(
        string Analyte,
        double Lowest,
        double Highest,
        double CvPercent,
        int Decimals
    );

    private static readonly ImmutableArray<Measured> s_measured =
    [
        new("aPTT", 25, 38, 2.5, 1),
        new("factor V", 60, 130, 5, 0),
        new("fibrinogen", 2, 5, 4, 1),
        new("factor VIII", 60, 180, 6, 0),
    ];

    /// <summary>The expected rate is 0.5 % of the studies a query; 600 studies of two queries with 1 % have 13 with a probability below 0.5 % (binomial).</summary>
    [Theory]
    [InlineData("factor V", 2)]
    [InlineData("aPTT", 2)]
    [InlineData("fibrinogen", 3)]
    [InlineData("factor VIII", 1)]
    public void Chance_alone_hardly_ever_raises_a_query(string analyte, int delays)
    {
        var measured = s_measured.Where(item => item.Analyte == analyte).ToImmutableArray();

        var raised = Enumerable
            .Range(1, 600)
            .Count(seed => !Of(Study(measured, delays, seed)).IsEmpty);

        Assert.InRange(raised, 0, 12);
    }

    [Fact]
    public void Chance_alone_hardly_ever_raises_a_query_over_several_analytes_together()
    {
        var raised = Enumerable
            .Range(1, 300)
            .Count(seed => !Of(Study(s_measured, 1, seed)).IsEmpty);

        Assert.InRange(raised, 0, 8);
    }

    [Fact]
    public void A_specimen_copied_from_another_is_told_once()
    {
        var study = Study(s_measured, 2, 7);
        var copied = Copy(study, 4, 17);

        var query = Assert.Single(Of(copied));

        Assert.Equal("same-results", query.Code);
        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains("specimens S004, S017 have", query.Message, StringComparison.Ordinal);
        Assert.Contains("aPTT, factor V, fibrinogen", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copied_row_of_one_analyte_is_told_where_its_results_are_unusual()
    {
        var measured = s_measured.Where(item => item.Analyte == "aPTT").ToImmutableArray();
        var study = Study(measured, 2, 3)
            .Result(4, 0, "71.3")
            .Result(4, 6, "73.8")
            .Result(4, 8, "74.4");

        var query = Assert.Single(Of(Copy(study, 4, 17)));

        Assert.Equal("same-results", query.Code);
    }

    [Fact]
    public void Many_copied_rows_are_told_in_one_query()
    {
        var study = Enumerable
            .Range(0, 20)
            .Aggregate(Study(s_measured, 2, 5), (made, i) => Copy(made, i, i + 20));

        var query = Assert.Single(Of(study), query => query.Code == "same-results");

        Assert.Contains("40 specimens in 20 groups", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_specimen_whose_delayed_results_are_its_baselines_is_told_once()
    {
        var study = Study(s_measured, 3, 7);
        var baselines = study
            .Inputs.Results.Where(row => row.Specimen == "S004" && row.Occasion.IsBaseline)
            .ToDictionary(row => row.Analyte, row => row.Result);

        var query = Assert.Single(
            Of(
                study.Rows(row =>
                    row.Specimen == "S004" ? row with { Result = baselines[row.Analyte] } : row
                )
            )
        );

        Assert.Equal("results-unchanged", query.Code);
        Assert.Contains(
            "specimen S004 are the same at every time",
            query.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Results_of_three_steps_agree_by_chance() =>
        Assert.Empty(
            Of(
                SmallStudy.Of(
                    [6, 8],
                    Enumerable
                        .Range(0, 40)
                        .Select(i => $"1.{i % 3} | 1.{i / 3 % 3} | 1.{i / 9 % 3}")
                )
            )
        );

    [Theory]
    [InlineData(1, "31", "28", "107")]
    [InlineData(5, "85", "90", "110")]
    [InlineData(0.5, "1.5", "3.0", "12.0", "4.0")]
    [InlineData(0.1, "31.4", "28.0", "30.1")]
    [InlineData(0.1, "31.43", "28.00")]
    [InlineData(1, "21", "42", "63")]
    [InlineData(0.1)]
    public void The_step_is_the_largest_number_of_which_all_are_multiples(
        double step,
        params string[] results
    ) =>
        Assert.Equal(
            step,
            ReportingStep.Of(
                SmallProtocol.For(40, [6]).Analytes[0],
                results.Select(text => decimal.Parse(text, CultureInfo.InvariantCulture))
            ),
            12
        );

    private static ImmutableArray<DataQuery> Of(SmallStudy study) =>
        [
            .. InputQueries
                .Of(study.Inputs)
                .Where(query => query.Code is "same-results" or "results-unchanged"),
        ];

    private static SmallStudy Copy(SmallStudy study, int from, int to)
    {
        var texts = study
            .Inputs.Results.Where(row => row.Specimen == SmallRows.Code(from))
            .ToDictionary(row => (row.Analyte, row.Occasion), row => row.Result);
        return study.Rows(row =>
            row.Specimen == SmallRows.Code(to)
                ? row with
                {
                    Result = texts[(row.Analyte, row.Occasion)],
                }
                : row
        );
    }

    /// <summary>Each specimen changes by 2 % ± 2 % and keeps its change; half of the stated variance is that of a result, half that of the run of its day.</summary>
    private static SmallStudy Study(ImmutableArray<Measured> measured, int delays, int seed)
    {
        var random = new Random(seed);
        ImmutableArray<int> hours = [.. Enumerable.Range(0, delays).Select(i => 6 + (2 * i))];
        var studies = measured
            .Select(item => (item, Study: SmallStudy.Of(hours, Lines(item, delays, random))))
            .ToImmutableArray();
        var inputs = studies[0].Study.Inputs;
        var analyte = inputs.Protocol.Analytes[0];
        return new(
            inputs with
            {
                Results =
                [
                    .. studies.SelectMany(part =>
                        part.Study.Inputs.Results.Select(row =>
                            row with
                            {
                                Analyte = NameOf(part.item),
                                SourceRow = row.SourceRow,
                            }
                        )
                    ),
                ],
                Protocol = inputs.Protocol with
                {
                    Analytes =
                    [
                        .. measured.Select(item =>
                            analyte with
                            {
                                Id = NameOf(item),
                                Decimals = 1,
                                BetweenRunCvPercent = (decimal)item.CvPercent,
                                MeasuringInterval = null,
                            }
                        ),
                    ],
                },
            }
        );

        string NameOf(Measured item) => item.Analyte;
    }

    private static IEnumerable<string> Lines(Measured item, int delays, Random random)
    {
        var runs = Enumerable
            .Range(0, 10 * (delays + 1))
            .Select(_ => Noise(item.CvPercent / Math.Sqrt(2)))
            .ToArray();
        return
        [
            .. Enumerable
                .Range(0, Specimens)
                .Select(specimen =>
                {
                    var value =
                        item.Lowest
                        * Math.Pow(
                            item.Highest / item.Lowest,
                            (random.NextDouble() + random.NextDouble()) / 2
                        );
                    var change = 1.02 * Noise(2);
                    return string.Join(
                        " | ",
                        Enumerable
                            .Range(0, delays + 1)
                            .Select(time =>
                                SmallRows.Text(
                                    Math.Round(
                                        (decimal)(
                                            value
                                            * (time == 0 ? 1 : change)
                                            * runs[(10 * time) + (specimen % 10)]
                                            * Noise(item.CvPercent / Math.Sqrt(2))
                                        ),
                                        item.Decimals
                                    )
                                )
                            )
                    );
                }),
        ];

        double Noise(double percent) =>
            Math.Exp(
                percent
                    / 100
                    * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
                    * Math.Cos(2 * Math.PI * random.NextDouble())
            );
    }
}
