using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Estimates;

/// <summary>Whether baselines surround a level so that a line says something there.</summary>
/// <param name="Below">Baselines below the level.</param>
/// <param name="Above">Baselines above the level.</param>
/// <param name="Gap">What is missing; null when nothing is.</param>
public sealed record LevelCoverage(int Below, int Above, CoverageGap? Gap)
{
    /// <summary>Fewest baselines on either side of a level.</summary>
    public const int FewestOnEitherSide = 3;

    /// <summary>Specimens must spread by so many times the analytical SD at the level, or measurement error bends the line.</summary>
    public const double LeastSpread = 5;

    internal static LevelCoverage Of(decimal level, CellData data, Analyte analyte)
    {
        var below = data.Compared.Count(pair => pair.Values().Baseline < level);
        var above = data.Compared.Count(pair => pair.Values().Baseline > level);
        return new LevelCoverage(below, above, GapOf(level, below, above, data, analyte));
    }

    private static CoverageGap? GapOf(
        decimal level,
        int below,
        int above,
        CellData data,
        Analyte analyte
    )
    {
        if (below < FewestOnEitherSide || above < FewestOnEitherSide)
        {
            return new FewBaselines(below, above);
        }

        var spread = Spread.Summarize(data.Pairs.X.AsSpan());
        if (analyte.BetweenRunCvPercent is not { } cv || !spread.TryGet(out var baselines))
        {
            return new SpreadUnknown();
        }

        var analytical = (double)(cv / 100 * level);
        // The SD of measured baselines holds the analytical one too.
        var observed = baselines.StandardDeviation;
        var between = Math.Sqrt(Math.Max(0, (observed * observed) - (analytical * analytical)));
        return between < LeastSpread * analytical ? new SpreadTooSmall(between, analytical) : null;
    }
}

/// <summary>What is missing for a line to say something at a level.</summary>
public abstract record CoverageGap;

/// <summary>Too few baselines on a side.</summary>
/// <param name="Below">Baselines below the level.</param>
/// <param name="Above">Baselines above it.</param>
public sealed record FewBaselines(int Below, int Above) : CoverageGap;

/// <summary>Without a between-run CV nothing tells whether the baselines spread far enough.</summary>
public sealed record SpreadUnknown : CoverageGap;

/// <summary>The specimens spread too little against the analytical SD.</summary>
/// <param name="BetweenSpecimens">Their SD, less the analytical one, in the unit.</param>
/// <param name="Analytical">The analytical SD at the level.</param>
public sealed record SpreadTooSmall(double BetweenSpecimens, double Analytical) : CoverageGap;
