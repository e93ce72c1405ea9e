using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>Percent change against baseline, with mean, limits of agreement and the allowable difference.</summary>
internal static class DifferencePlot
{
    private const int CurvePoints = 33;

    /// <summary>More codes than these would lie over each other.</summary>
    private const int MostNamed = 4;

    private const string NoLimitForSingleSpecimens =
        "No limit for single specimens in the protocol.";

    public static ChartBlock Of(
        Cell cell,
        SequenceNames names,
        CellAxes axes,
        double heightMillimeters
    ) =>
        new(
            new Chart(
                cell.Key.TimePoint.ToString(),
                axes.Baseline,
                axes.Change,
                Layers(cell, axes)
            ),
            heightMillimeters,
            AlternativeText(cell, names),
            Caption(cell)
        );

    private static ImmutableArray<ChartLayer> Layers(Cell cell, CellAxes axes)
    {
        var layers = ImmutableArray.CreateBuilder<ChartLayer>();
        if (
            Deciding(cell) is
            { Mean.Value: { } interval, LowerLimit: { } low, UpperLimit: { } high } bias
        )
        {
            layers.Add(
                Band(
                    axes,
                    interval.Lower,
                    interval.Upper,
                    $"{NumberText.Percent(bias.ConfidenceLevel)} interval of the mean, which decides"
                )
            );
            layers.Add(Limit(high, "allowable bias"));
            layers.Add(Limit(low, null));
        }

        if (cell.Estimates.AgreementPercent.TryGet(out var agreement))
        {
            layers.Add(Level(agreement.Upper, DashStyle.DashDot, "limits of agreement"));
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
        if (MeanOf(cell) is { } mean)
        {
            layers.Add(
                new ReferenceLine(
                    LineDirection.Horizontal,
                    mean,
                    DashStyle.Solid,
                    LineWeight.Heavy,
                    null,
                    "mean change"
                )
            );
        }

        var compared = cell.Pairs.Where(pair => pair.ChangePercent is not null).ToImmutableArray();
        foreach (var (individual, i) in Individual(cell).Select((result, i) => (result, i)))
        {
            layers.Add(
                Allowable(
                    individual.Limit,
                    axes,
                    compared,
                    1,
                    i == 0 ? "allowable difference" : null
                )
            );
            layers.Add(Allowable(individual.Limit, axes, compared, -1, null));
        }

        layers.AddRange(Points(cell, axes, compared));
        return layers.ToImmutable();
    }

    /// <summary>The mean of the reading that decides, inside its interval; that of the changes as measured where none decides in percent.</summary>
    private static double? MeanOf(Cell cell) =>
        Deciding(cell)?.Mean.Value?.Mean ?? cell.Estimates.MeanPercent.Value?.Mean;

    private static IEnumerable<ChartLayer> Points(
        Cell cell,
        CellAxes axes,
        ImmutableArray<PairRecord> compared
    )
    {
        var beyond = compared
            .Where(pair => !axes.Change.Holds(pair.ChangePercent ?? 0))
            .ToImmutableArray();
        var shown = compared.RemoveRange(beyond);
        var outside = shown.Where(pair => CellAxes.IsOutside(cell, pair)).ToImmutableArray();
        yield return new PointLayer(
            [.. shown.RemoveRange(outside).Select(pair => Point(pair, null))],
            MarkerShape.OpenCircle,
            Individual(cell).Any() ? "within the allowable difference" : "specimen"
        );
        if (!outside.IsEmpty)
        {
            var named = outside.Length <= MostNamed;
            yield return new PointLayer(
                [.. outside.Select(pair => Point(pair, named ? pair.Specimen : null))],
                MarkerShape.FilledSquare,
                named
                    ? "outside, named"
                    : $"{NumberText.Count(outside.Length)} outside, marked under Every specimen"
            );
        }

        if (!beyond.IsEmpty)
        {
            var named = beyond.Length <= MostNamed;
            yield return new PointLayer(
                [.. beyond.Select(pair => AtTheEdge(pair, axes, named))],
                MarkerShape.Cross,
                named
                    ? "beyond the frame, value given"
                    : $"{NumberText.Count(beyond.Length)} beyond the frame, see Every specimen"
            );
        }
    }

    /// <summary>The criterion on the mean whose interval can be drawn: in percent.</summary>
    private static BiasResult? Deciding(Cell cell) =>
        cell
            .Criteria.OfType<BiasResult>()
            .FirstOrDefault(bias => bias.Scale == ChangeScale.Percent);

    private static ReferenceLine Limit(double value, string? legend) =>
        new(LineDirection.Horizontal, value, DashStyle.Dashed, LineWeight.Heavy, null, legend);

    private static IEnumerable<IndividualResult> Individual(Cell cell) =>
        cell.Criteria.OfType<IndividualResult>();

    private static string Caption(Cell cell) =>
        Individual(cell).Any() ? NotDrawn(cell) : NoLimitForSingleSpecimens;

    /// <summary>Specimens that count as outside without a change that could be drawn: failed, beyond a limit of measurement, missing.</summary>
    private static string NotDrawn(Cell cell)
    {
        var drawn = cell
            .Pairs.Where(pair => pair.ChangePercent is not null)
            .Select(pair => pair.Specimen)
            .ToImmutableHashSet();
        var others = Individual(cell)
            .SelectMany(result => result.Agreement.OutsideSpecimens)
            .Distinct()
            .Where(specimen => !drawn.Contains(specimen))
            .ToImmutableArray();
        return others.IsEmpty
            ? ""
            : $"Not drawn, for want of two measured results, and counted outside: {SpecimenNames.Of(others)}.";
    }

    private static ChartPoint Point(PairRecord pair, string? label) =>
        new((double)pair.Values().Baseline, pair.ChangePercent ?? 0, label);

    private static ChartPoint AtTheEdge(PairRecord pair, CellAxes axes, bool named)
    {
        var change = pair.ChangePercent ?? 0;
        return new ChartPoint(
            (double)pair.Values().Baseline,
            Math.Clamp(change, axes.Change.Minimum, axes.Change.Maximum),
            named ? $"{pair.Specimen} {NumberText.Change(change, 1)} %" : null
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

    /// <summary>In percent an absolute limit is a curve, which has no value at a baseline of zero: it begins at the lowest baseline.</summary>
    private static LineLayer Allowable(
        Limit limit,
        CellAxes axes,
        ImmutableArray<PairRecord> compared,
        int sign,
        string? legend
    )
    {
        var allowance = new Statistics.Agreement.Allowance(limit.AbsoluteInUnit, limit.Percent);
        var lowest = compared
            .Select(pair => (double)pair.Values().Baseline)
            .DefaultIfEmpty(axes.Baseline.Maximum)
            .Min();
        var from = axes.Baseline.Minimum > 0 ? axes.Baseline.Minimum : lowest;
        var step = (axes.Baseline.Maximum - from) / (CurvePoints - 1);
        return new LineLayer(
            [
                .. Enumerable
                    .Range(0, CurvePoints)
                    .Select(i => from + i * step)
                    .Select(x => new Position(x, sign * 100 * allowance.At(x) / x))
                    .Where(position => axes.Change.Holds(position.Y)),
            ],
            DashStyle.Dotted,
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
        return $"Percent change of {names.Analyte.Id} from baseline at {cell.Key.TimePoint} for {NumberText.Count(cell.Estimates.Compared)} specimens.{agreement} {(Individual(cell).Any() ? $"Outside the allowable difference, of those drawn: {SpecimenNames.Of(outside)}." : NoLimitForSingleSpecimens)}";
    }
}
