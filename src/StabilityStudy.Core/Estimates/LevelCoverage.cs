using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Estimates;

/// <summary>Whether baselines surround a level so that a line says something there.</summary>
/// <param name="Below">Baselines below the level.</param>
/// <param name="Above">Baselines above the level.</param>
/// <param name="Gap">What is missing, in words; null when nothing is.</param>
public sealed record LevelCoverage(int Below, int Above, string? Gap)
{
    /// <summary>Fewest baselines on either side of a level.</summary>
    public const int FewestOnEitherSide = 3;

    /// <summary>Specimens must spread by so many times the analytical SD at the level, or measurement error bends the line.</summary>
    private const double LeastSpread = 5;

    internal static LevelCoverage Of(decimal level, CellData data, Analyte analyte)
    {
        var below = data.Compared.Count(pair => pair.Values().Baseline < level);
        var above = data.Compared.Count(pair => pair.Values().Baseline > level);
        return new LevelCoverage(below, above, GapOf(level, below, above, data, analyte));
    }

    private static string? GapOf(
        decimal level,
        int below,
        int above,
        CellData data,
        Analyte analyte
    )
    {
        if (below < FewestOnEitherSide || above < FewestOnEitherSide)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{below} baselines below and {above} above it, at least {FewestOnEitherSide} needed on either side"
            );
        }

        var spread = Spread.Summarize(data.Pairs.X.AsSpan());
        if (analyte.BetweenRunCvPercent is not { } cv || !spread.TryGet(out var baselines))
        {
            return "without a between-run CV nothing tells whether the baselines spread far enough";
        }

        var analytical = (double)(cv / 100 * level);
        // The SD of measured baselines holds the analytical one too.
        var observed = baselines.StandardDeviation;
        var between = Math.Sqrt(Math.Max(0, (observed * observed) - (analytical * analytical)));
        return between < LeastSpread * analytical
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"the specimens spread by an SD of {between:0.###} (that of the baselines less the analytical one), less than {LeastSpread} times the analytical SD of {analytical:0.###} there"
            )
            : null;
    }
}
