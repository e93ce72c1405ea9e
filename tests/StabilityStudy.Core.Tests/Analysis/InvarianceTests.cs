using CsCheck;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>What holds of every study, tried with invented ones: some twenty for each statement, or as many as the variable STUDIES says.</summary>
[Trait("lane", "slow")]
public sealed class InvarianceTests
{
    private static readonly int s_studies = LongProof.Setting("STUDIES", 20);

    /// <summary>Results near the limits, at them and beyond, with tubes that failed or are missing.</summary>
    private static readonly Gen<string> s_delayed = Gen.Frequency(
        (30, Gen.Int[255, 345].Select(tenths => SmallRows.Text(tenths / 10m))),
        (20, OneOf("30.0", "30.2", "29.8", "32.2", "34.5", "25.5")),
        (4, OneOf("CLOT", "ERROR", "NA", "QNS", "NT", "-", ">180", "<20", "190.0"))
    );

    private static readonly Gen<SmallStudy> s_study = Gen.Select(
            Gen.Frequency(
                (20, OneOf("30.0", "30.0", "29.9", "31.7")),
                (1, OneOf(">180", "ERROR", "-"))
            ),
            s_delayed,
            s_delayed,
            (baseline, first, second) => $"{baseline} | {first} | {second}"
        )
        .Array[0, 45]
        .Select(lines => SmallStudy.Of([6, 8], lines));

    private static Gen<string> OneOf(params string[] texts) =>
        Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static string Decisions(StudyAnalysis analysis) =>
        string.Join(
            "\n",
            analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .Select(cell =>
                    $"{cell.Conclusion} {cell.OwnConclusion} "
                    + string.Join(
                        ", ",
                        cell.Criteria.Select(result =>
                            result.Verdict
                            + " "
                            + string.Join("+", result.Reasons.Select(reason => reason.Name()))
                        )
                    )
                    + " "
                    + string.Join(",", cell.Pairs.Select(pair => pair.Status))
                    + " "
                    + string.Join(
                        ",",
                        cell.Robustness.Select(line => line.Question.Kind + "=" + line.Conclusion)
                    )
                )
        );

    [Fact]
    public void What_is_received_counted_and_supported_adds_up() =>
        s_study.Sample(
            study =>
            {
                var cells = study.Sequence().Cells;
                return cells.All(cell => AddsUp(cell.Disposition, study))
                    && cells
                        .SelectMany(cell => cell.Criteria)
                        .OfType<IndividualResult>()
                        .All(IsInsideOrOutsideForOneReason)
                    && cells.Index().All(item => MeetsAllWhereSupported(cells, item.Index));
            },
            iter: 2 * s_studies
        );

    private static bool AddsUp(Disposition disposition, SmallStudy study) =>
        disposition.Counts.Sum(item => item.Count) == disposition.Received
        && disposition.Received
            == study.Inputs.Tubes.Select(tube => tube.Specimen).Distinct().Count();

    private static bool IsInsideOrOutsideForOneReason(IndividualResult result)
    {
        var count = result.Agreement;
        return count.Counted
                == count.Inside + count.OutsideMeasured + count.Failed + count.Undecidable
            && count.OutsideSpecimens.Length == count.Counted - count.Inside;
    }

    // A supported time point meets every criterion and follows supported ones only.
    private static bool MeetsAllWhereSupported(ImmutableArray<Cell> cells, int i) =>
        cells[i].Conclusion != Conclusion.Supported
        || (
            cells[i].Criteria.All(result => result.Verdict == Verdict.Met)
            && cells.Take(i).All(earlier => earlier.Conclusion == Conclusion.Supported)
        );

    [Fact]
    public void The_order_of_the_rows_does_not_matter() =>
        s_study.Sample(
            study =>
            {
                var shuffled = new SmallStudy(
                    study.Inputs with
                    {
                        Tubes = [.. study.Inputs.Tubes.Reverse()],
                        Results =
                        [
                            .. study
                                .Inputs.Results.OrderBy(row => row.Result.Text)
                                .ThenByDescending(row => row.Specimen),
                        ],
                    }
                );
                return Decisions(study.Analyze()) == Decisions(shuffled.Analyze());
            },
            iter: s_studies
        );

    [Theory]
    [InlineData("10")]
    [InlineData("0.1")]
    [InlineData("1.00")]
    public void Another_unit_or_more_zeros_change_no_decision(string factorText)
    {
        var factor = decimal.Parse(factorText, System.Globalization.CultureInfo.InvariantCulture);
        s_study.Sample(
            study =>
            {
                var scaled = study
                    .Rows(row => row with { Result = Scaled(row.Result, factor) })
                    .Analyte(analyte =>
                        analyte with
                        {
                            Decimals =
                                analyte.Decimals
                                + (
                                    factor < 1 ? 1
                                    : factor == 10 ? -1
                                    : 0
                                ),
                            MeasuringInterval = new MeasuringInterval(20 * factor, 180 * factor),
                        }
                    );
                return Decisions(study.Analyze()) == Decisions(scaled.Analyze());
            },
            iter: s_studies / 2
        );
    }

    [Fact]
    public void An_excluded_pair_changes_no_estimate_and_no_verdict()
    {
        var study = SmallStudy.Quiet(41).Result(40, 6, "60.0").Exclude(40, 6).Cell();
        var without = SmallStudy.Quiet(40).Cell();

        Assert.Equal(PairStatus.Excluded, study.Pairs[40].Status);
        Assert.Equal(without.Estimates.Compared, study.Estimates.Compared);
        Assert.Equal(
            without.Estimates.MeanPercent.Value! with
            {
                ByCluster = [],
            },
            study.Estimates.MeanPercent.Value! with
            {
                ByCluster = [],
            }
        );
        Assert.Equal(
            without.Estimates.MeanPercent.Value.ByCluster,
            study.Estimates.MeanPercent.Value.ByCluster
        );
        Assert.Equal(
            without.Estimates.AgreementPercent.Value,
            study.Estimates.AgreementPercent.Value
        );
        Assert.Equal(
            without.Criteria.Select(result => result.Verdict),
            study.Criteria.Select(result => result.Verdict)
        );
    }

    [Fact]
    public void Turning_one_result_into_a_failed_tube_never_gains_support() =>
        s_study.Sample(
            study =>
            {
                if (study.Inputs.Results.All(row => row.Tube != "S000-6"))
                {
                    return true;
                }

                // The mean is left aside: a tube that failed gives it no number.
                var shares = study.Criteria(SmallProtocol.EachCriterion);
                return shares.Result(0, 6, "CLOT").Cell().OwnConclusion != Conclusion.Supported
                    || shares.Cell().OwnConclusion == Conclusion.Supported;
            },
            iter: s_studies
        );

    private static ReportedResult Scaled(ReportedResult result, decimal factor) =>
        result switch
        {
            MeasuredResult measured => measured with { Value = measured.Value * factor },
            CensoredResult censored => censored with { Limit = censored.Limit * factor },
            _ => result,
        };
}
