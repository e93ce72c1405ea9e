namespace StabilityStudy.Statistics.Regression;

/// <summary>The line of all pairs but some, from sums over all of them; null where it has to be fitted to the others themselves.</summary>
/// <param name="left">Numbers of the pairs that are left out.</param>
internal delegate Line? LineWithout(ReadOnlySpan<int> left);

/// <summary>
/// Leaves pairs out of the sums of a line, so that a jackknife takes time in proportion to the pairs and not to their square. The line is that of the others to within the rounding of the sums.
/// </summary>
/// <remarks>
/// Coordinates are u = x − x̄ and the residual e = y − a − bx of the line of all pairs. The level of a pair is (x + λy + c·e)/(1 + λ) with c = λ(b − 1)/(1 + λb²), so a line nearby changes it by the share
/// r = (A·e + B + C·u)/level with small A, B and C that are the same for all pairs, and the weight 1/level² by the factor 1 − 2r + 3r² − 4r³ + …. The sums over all pairs are therefore polynomials in A, B and C, whose coefficients
/// are summed once; those of the pairs left out are subtracted as they are.
/// </remarks>
internal sealed class LeftOutSums
{
    /// <summary>With fewer pairs each line is fitted by itself, which takes little time.</summary>
    public const int FewestPairs = 500;

    /// <summary>The largest share by which a level may change: what the series leaves out is 5r⁴.</summary>
    private const double LargestShare = 1e-4;

    /// <summary>Power up to which the series of the weights goes.</summary>
    private const int Order = 3;

    /// <summary>Powers of u and e in the sums of a line.</summary>
    private const int Squares = 2;

    /// <summary>With less of the spread of x left, rounding would show.</summary>
    private const double LeastSpreadLeft = 1e-3;

    private readonly Line _line;
    private readonly double _ratio;
    private readonly bool _isWeighted;
    private readonly double _meanX;
    private readonly double[] _u;
    private readonly double[] _e;
    private readonly double[] _level;

    /// <summary>Σ w·uᵖeᑫ/levelᵏ at [k, p, q].</summary>
    private readonly double[,,] _moments = new double[
        Order + 1,
        Squares + Order + 1,
        Squares + Order + 1
    ];

    private readonly (double E, double One, double U) _largest;

    /// <summary>The sums of all pairs around their line.</summary>
    /// <param name="line">The line of all pairs.</param>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members.</param>
    /// <param name="errorVarianceRatio">λ.</param>
    /// <param name="isWeighted">Whether errors are in proportion to the level; otherwise all pairs count the same.</param>
    public LeftOutSums(
        Line line,
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        bool isWeighted
    )
    {
        (_line, _ratio, _isWeighted) = (line, errorVarianceRatio, isWeighted);
        (_u, _e, _level) = (new double[x.Length], new double[x.Length], new double[x.Length]);
        foreach (var value in x)
        {
            _meanX += value / x.Length;
        }

        var pull = PullOf(line);
        for (var i = 0; i < x.Length; i++)
        {
            _u[i] = x[i] - _meanX;
            _e[i] = line.Residual(x[i], y[i]);
            _level[i] = isWeighted ? (x[i] + (_ratio * y[i]) + (pull * _e[i])) / (1 + _ratio) : 1;
            Add(_u[i], _e[i], _level[i]);
            _largest = (
                Math.Max(_largest.E, Math.Abs(_e[i]) / _level[i]),
                Math.Max(_largest.One, 1 / _level[i]),
                Math.Max(_largest.U, Math.Abs(_u[i]) / _level[i])
            );
        }
    }

    /// <summary>One round of the line without some pairs, their weights those of a line nearby; null where the series does not reach, or too little is left.</summary>
    /// <param name="nearby">The line before.</param>
    /// <param name="left">Numbers of the pairs that are left out.</param>
    /// <returns>Sums from which the next line follows.</returns>
    public CenteredSums? Without(Line nearby, ReadOnlySpan<int> left)
    {
        var pull = PullOf(nearby);
        var (a, b, c) = _isWeighted
            ? (
                (pull - PullOf(_line)) / (1 + _ratio),
                pull
                    * (_line.Intercept - nearby.Intercept + ((_line.Slope - nearby.Slope) * _meanX))
                    / (1 + _ratio),
                pull * (_line.Slope - nearby.Slope) / (1 + _ratio)
            )
            : (0, 0, 0);
        if (
            (Math.Abs(a) * _largest.E) + (Math.Abs(b) * _largest.One) + (Math.Abs(c) * _largest.U)
            > LargestShare
        )
        {
            return null;
        }

        Span<double> powersA = [1, a, a * a, a * a * a];
        Span<double> powersB = [1, b, b * b, b * b * b];
        Span<double> powersC = [1, c, c * c, c * c * c];
        var total = Sum(0, 0, powersA, powersB, powersC);
        var sumU = Sum(1, 0, powersA, powersB, powersC);
        var sumE = Sum(0, 1, powersA, powersB, powersC);
        var sumUU = Sum(2, 0, powersA, powersB, powersC);
        var sumUE = Sum(1, 1, powersA, powersB, powersC);
        var sumEE = Sum(0, 2, powersA, powersB, powersC);
        var spread = sumUU - (sumU * sumU / total);
        foreach (var i in left)
        {
            var (u, e) = (_u[i], _e[i]);
            var level = _level[i] + (a * e) + b + (c * u);
            var weight = 1 / (level * level);
            total -= weight;
            sumU -= weight * u;
            sumE -= weight * e;
            sumUU -= weight * u * u;
            sumUE -= weight * u * e;
            sumEE -= weight * e * e;
        }

        var (meanU, meanE) = (sumU / total, sumE / total);
        var (suu, sue, see) = (
            sumUU - (sumU * meanU),
            sumUE - (sumU * meanE),
            sumEE - (sumE * meanE)
        );
        var meanX = _meanX + meanU;
        return suu > LeastSpreadLeft * spread
            ? new CenteredSums(
                meanX,
                _line.Intercept + (_line.Slope * meanX) + meanE,
                suu,
                (_line.Slope * _line.Slope * suu) + (2 * _line.Slope * sue) + see,
                (_line.Slope * suu) + sue
            )
            : null;
    }

    private double PullOf(Line line) =>
        _ratio * (line.Slope - 1) / (1 + (_ratio * line.Slope * line.Slope));

    private void Add(double u, double e, double level)
    {
        var weight = 1 / (level * level);
        for (var k = 0; k <= (_isWeighted ? Order : 0); k++)
        {
            var ofU = weight;
            for (var p = 0; p <= Squares + k; p++)
            {
                var ofBoth = ofU;
                for (var q = 0; p + q <= Squares + k; q++)
                {
                    _moments[k, p, q] += ofBoth;
                    ofBoth *= e;
                }

                ofU *= u;
            }

            weight /= level;
        }
    }

    /// <summary>Σ w′·uᵖeᑫ with the weights w′ of the line nearby: the term of order k is (−1)ᵏ(k + 1)·Σ k!/(i!j!m!)·AⁱBʲCᵐ·[k, p + m, q + i].</summary>
    private double Sum(
        int p,
        int q,
        ReadOnlySpan<double> powersA,
        ReadOnlySpan<double> powersB,
        ReadOnlySpan<double> powersC
    )
    {
        ReadOnlySpan<int> factorials = [1, 1, 2, 6];
        var sum = 0.0;
        for (var k = 0; k <= (_isWeighted ? Order : 0); k++)
        {
            var term = 0.0;
            for (var i = 0; i <= k; i++)
            {
                for (var m = 0; i + m <= k; m++)
                {
                    var j = k - i - m;
                    term +=
                        factorials[k]
                        / (factorials[i] * factorials[j] * factorials[m])
                        * powersA[i]
                        * powersB[j]
                        * powersC[m]
                        * _moments[k, p + m, q + i];
                }
            }

            sum += (k % 2 == 0 ? 1 : -1) * (k + 1) * term;
        }

        return sum;
    }
}
