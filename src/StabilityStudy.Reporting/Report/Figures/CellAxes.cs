using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>The same axes for all time points of a sequence, so that the eye can compare them.</summary>
internal sealed class CellAxes
{
    public CellAxes(Sequence sequence, SequenceNames names)
    {
        var pairs = sequence
            .Cells.SelectMany(cell => cell.Pairs)
            .Where(pair => pair.ChangePercent is not null)
            .ToImmutableArray();
        var baselines = pairs.Select(pair => (double)pair.Values().Baseline).ToImmutableArray();
        Baseline = AxisScale.For(Title("Baseline ", names), baselines);
        var results = pairs
            .Select(pair => (double)pair.Values().Delayed)
            .Concat(baselines)
            .ToImmutableArray();
        Delayed = AxisScale.For(Title("Delayed ", names), results);
        Results = AxisScale.For(Title("", names), results);
        var limits = sequence
            .Cells.SelectMany(cell => cell.Criteria)
            .OfType<IndividualResult>()
            .Select(result => (double)(result.Limit.Percent ?? 0));
        var changes = pairs.ToLookup(pair => pair.IsOutlier, pair => pair.ChangePercent ?? 0);
        Change = AxisScale.ForMost(
            "Change, %",
            changes[false]
                .Concat(limits.SelectMany(limit => new[] { -limit, limit }))
                .Concat(
                    sequence
                        .Cells.SelectMany(cell => cell.Criteria)
                        .OfType<BiasResult>()
                        .Where(bias => bias.Scale == ChangeScale.Percent)
                        .SelectMany(bias =>
                            new[]
                            {
                                bias.LowerLimit ?? 0,
                                bias.UpperLimit ?? 0,
                                bias.Mean.Value?.Lower ?? 0,
                                bias.Mean.Value?.Upper ?? 0,
                            }
                        )
                )
                .Concat(
                    sequence
                        .Cells.Select(cell => cell.Estimates.AgreementPercent.Value)
                        .OfType<Statistics.Agreement.LimitsOfAgreement>()
                        .SelectMany(agreement =>
                            new[] { agreement.LowerExact.Lower, agreement.UpperExact.Upper }
                        )
                )
                .DefaultIfEmpty(0),
            changes[true]
        );
    }

    /// <summary>Baseline results.</summary>
    public Axis Baseline { get; }

    /// <summary>Delayed results.</summary>
    public Axis Delayed { get; }

    /// <summary>Results of both times, on the scale of the delayed ones.</summary>
    public Axis Results { get; }

    /// <summary>Percent changes.</summary>
    public Axis Change { get; }

    /// <summary>Whether a pair's specimen counts as outside for any single-specimen criterion of its cell.</summary>
    public static bool IsOutside(Cell cell, PairRecord pair) =>
        cell
            .Criteria.OfType<IndividualResult>()
            .Any(result => result.Agreement.OutsideSpecimens.Contains(pair.Specimen));

    /// <summary>"Baseline aPTT, s"; a ratio that is called like its unit is named once.</summary>
    private static string Title(string when, SequenceNames names) =>
        names.Analyte.ShownUnit == names.Analyte.Id || names.Analyte.ShownUnit.Length == 0
            ? $"{when}{names.Analyte.Id}"
            : $"{when}{names.Analyte.Id}, {names.Analyte.ShownUnit}";
}
