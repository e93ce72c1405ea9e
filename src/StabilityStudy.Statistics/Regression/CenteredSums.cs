using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Weighted means and centered sums of squares and products of pairs; the weights are 1 for an unweighted fit.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CenteredSums(
    double MeanX,
    double MeanY,
    double Sxx,
    double Syy,
    double Sxy
)
{
    /// <summary>Sums of pairs that all count the same.</summary>
    public static CenteredSums Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var ones = new double[x.Length];
        Array.Fill(ones, 1.0);
        return Of(x, y, ones);
    }

    /// <summary>Two passes, means first: the one-pass formula loses all digits when the mean is large beside the spread.</summary>
    public static CenteredSums Of(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> weights
    )
    {
        double total = 0;
        double sumX = 0;
        double sumY = 0;
        for (var i = 0; i < x.Length; i++)
        {
            total += weights[i];
            sumX += weights[i] * x[i];
            sumY += weights[i] * y[i];
        }

        var meanX = sumX / total;
        var meanY = sumY / total;
        double sxx = 0;
        double syy = 0;
        double sxy = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var dx = x[i] - meanX;
            var dy = y[i] - meanY;
            sxx += weights[i] * dx * dx;
            syy += weights[i] * dy * dy;
            sxy += weights[i] * dx * dy;
        }

        return new CenteredSums(meanX, meanY, sxx, syy, sxy);
    }
}
