using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Percent change against baseline, with mean, limits of agreement and the allowable difference.</summary>
internal static class DifferencePlot
{
    private const int CurvePoints = 33;

    public static ChartBlock Of(
        Cell cell,
        SequenceNames names,
        CellAxes axes,
        double heightMillimeters
    ) =>
        new(
            new Chart("", axes.Baseline, axes.Change, Layers(cell, axes)),
            heightMillimeters,
            AlternativeText(cell, names),
            "Change of each specimen against its baseline."
        );

    private static ImmutableArray<ChartLayer> Layers(Cell cell, CellAxes axes)
    {
        var layers = ImmutableArray.CreateBuilder<ChartLayer>();
        if (cell.Estimates.AgreementPercent.TryGet(out var agreement))
        {
            layers.Add(
                Band(
                    axes,
                    agreement.UpperExact.Lower,
                    agreement.UpperExact.Upper,
                    "limits of agreement with 95 % intervals"
                )
            );
            layers.Add(Band(axes, agreement.LowerExact.Lower, agreement.LowerExact.Upper, null));
            layers.Add(Level(agreement.Upper, DashStyle.DashDot, null));
            layers.Add(Level(agreement.Lower, DashStyle.DashDot, null));
        }

        layers.Add(
            new ReferenceLine(
                LineDirection.Horizontal,
                0,
                DashStyle.Solid,
                LineWeight.Thin,
                null,
                null
            )
        );
        if (cell.Estimates.MeanPercent.TryGet(out var mean))
        {
            layers.Add(
                new ReferenceLine(
                    LineDirection.Horizontal,
                    mean.Mean,
                    DashStyle.Solid,
                    LineWeight.Medium,
                    null,
                    "mean change"
                )
            );
        }

        if (cell.Criteria.OfType<IndividualResult>().FirstOrDefault() is { } individual)
        {
            layers.Add(Allowable(individual.Limit, axes, 1, "allowable difference"));
            layers.Add(Allowable(individual.Limit, axes, -1, null));
        }

        var compared = cell.Pairs.Where(pair => pair.ChangePercent is not null).ToImmutableArray();
        var beyond = compared
            .Where(pair => !axes.Change.Holds(pair.ChangePercent ?? 0))
            .ToImmutableArray();
        var shown = compared.RemoveRange(beyond);
        layers.Add(
            new PointLayer(
                [
                    .. shown
                        .Where(pair => !CellAxes.IsOutside(cell, pair))
                        .Select(pair => Point(pair, null)),
                ],
                MarkerShape.OpenCircle,
                "within the allowable difference"
            )
        );
        layers.Add(
            new PointLayer(
                [
                    .. shown
                        .Where(pair => CellAxes.IsOutside(cell, pair))
                        .Select(pair => Point(pair, pair.Specimen)),
                ],
                MarkerShape.FilledTriangle,
                "outside, named"
            )
        );
        if (!beyond.IsEmpty)
        {
            layers.Add(
                new PointLayer(
                    [.. beyond.Select(pair => AtTheEdge(pair, axes))],
                    MarkerShape.Cross,
                    "beyond the frame, value given"
                )
            );
        }

        return layers.ToImmutable();
    }

    private static ChartPoint Point(PairRecord pair, string? label) =>
        new((double)pair.Values().Baseline, pair.ChangePercent ?? 0, label);

    private static ChartPoint AtTheEdge(PairRecord pair, CellAxes axes)
    {
        var change = pair.ChangePercent ?? 0;
        return new ChartPoint(
            (double)pair.Values().Baseline,
            Math.Clamp(change, axes.Change.Minimum, axes.Change.Maximum),
            $"{pair.Specimen} {NumberText.Change(change, 1)} %"
        );
    }

    private static BandLayer Band(CellAxes axes, double lower, double upper, string? legend) =>
        new(
            [
                new BandPoint(axes.Baseline.Minimum, lower, upper),
                new BandPoint(axes.Baseline.Maximum, lower, upper),
            ],
            BandFill.LightGray,
            legend
        );

    private static ReferenceLine Level(double value, DashStyle dash, string? legend) =>
        new(LineDirection.Horizontal, value, dash, LineWeight.Thin, null, legend);

    private static LineLayer Allowable(Limit limit, CellAxes axes, int sign, string? legend)
    {
        var allowance = new Statistics.Agreement.Allowance(limit.AbsoluteInUnit, limit.Percent);
        var from = Math.Max(axes.Baseline.Minimum, double.Epsilon);
        var step = (axes.Baseline.Maximum - from) / (CurvePoints - 1);
        return new LineLayer(
            [
                .. Enumerable
                    .Range(0, CurvePoints)
                    .Select(i => from + i * step)
                    .Select(x => new Position(x, sign * 100 * allowance.At(x) / x))
                    .Where(position => axes.Change.Holds(position.Y)),
            ],
            DashStyle.Dashed,
            LineWeight.Medium,
            null,
            legend
        );
    }

    private static string AlternativeText(Cell cell, SequenceNames names)
    {
        var outside = cell
            .Pairs.Where(pair => pair.ChangePercent is not null && CellAxes.IsOutside(cell, pair))
            .Select(pair => pair.Specimen)
            .ToImmutableArray();
        var agreement = cell.Estimates.AgreementPercent.TryGet(out var limits)
            ? $" Limits of agreement {NumberText.Interval(limits.Lower, limits.Upper, 1)} %."
            : "";
        return $"Percent change of {names.Analyte.Id} from baseline at {cell.Key.TimePoint} for {NumberText.Count(cell.Estimates.Compared)} specimens.{agreement} Outside the allowable difference: {(outside.IsEmpty ? "none" : string.Join(", ", outside))}.";
    }
}
