namespace StabilityStudy.Statistics.Regression;

/// <summary>Weights 1/level² for errors in proportion to the level, the level of a pair being (X̂ + λŶ)/(1 + λ).</summary>
internal static class ProportionalWeights
{
    /// <summary>Weights with the measured values for X̂ and Ŷ; false when a level is not above zero.</summary>
    public static bool TryMeasured(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        Span<double> weights
    )
    {
        for (var i = 0; i < x.Length; i++)
        {
            weights[i] = Weight(x[i], y[i], errorVarianceRatio);
        }

        return !weights.Contains(0);
    }

    /// <summary>Weights with the true values that a line implies for X̂ and Ŷ; false when a level is not above zero.</summary>
    public static bool TryAround(
        Line line,
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        Span<double> weights
    )
    {
        var divisor = 1 + (errorVarianceRatio * line.Slope * line.Slope);
        for (var i = 0; i < x.Length; i++)
        {
            var share = line.Residual(x[i], y[i]) / divisor;
            weights[i] = Weight(
                x[i] + (errorVarianceRatio * line.Slope * share),
                y[i] - share,
                errorVarianceRatio
            );
        }

        return !weights.Contains(0);
    }

    /// <summary>0 stands for a level that is not above zero; no other level has that weight.</summary>
    private static double Weight(double trueX, double trueY, double errorVarianceRatio)
    {
        var level = (trueX + (errorVarianceRatio * trueY)) / (1 + errorVarianceRatio);
        return level > 0 ? 1 / (level * level) : 0;
    }
}
