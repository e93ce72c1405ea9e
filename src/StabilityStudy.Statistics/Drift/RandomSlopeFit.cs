namespace StabilityStudy.Statistics.Drift;

/// <summary>The mean slope of specimens under a model in which each has a level and a slope of its own.</summary>
/// <param name="SpecimenCount">Number of specimens.</param>
/// <param name="ResultCount">Number of results N.</param>
/// <param name="Intercept">Mean level at g = 0, in the unit of the results.</param>
/// <param name="Slope">Mean slope, in that unit per unit of g.</param>
/// <param name="SlopeStandardError">Its standard error.</param>
/// <param name="SlopeLower">One-sided lower bound of the mean slope: of the model, and where clusterings were given of all that specimens share.</param>
/// <param name="SlopeUpper">One-sided upper bound of the mean slope.</param>
/// <param name="OneSidedConfidence">Level of each bound.</param>
/// <param name="DegreesOfFreedom">Number of specimens with results at two delays or more, less one.</param>
/// <param name="InterceptVariance">Variance of the levels between specimens.</param>
/// <param name="SlopeVariance">Variance of the slopes between specimens.</param>
/// <param name="Correlation">Correlation of level and slope; null where one of the variances is zero.</param>
/// <param name="ResidualVariance">Variance of a result about the line of its specimen.</param>
/// <param name="Boundary">Whether a variance or the correlation lies at the end of what is possible.</param>
/// <param name="RestrictedLogLikelihood">Logarithm of the restricted likelihood at the estimate.</param>
/// <param name="CorrectedInformation">AICc of the fit by maximum likelihood: comparable between shapes g of the same results, the smallest fits best; null with fewer than eight results, where its correction is not defined.</param>
public sealed record RandomSlopeFit(
    int SpecimenCount,
    int ResultCount,
    double Intercept,
    double Slope,
    double SlopeStandardError,
    double SlopeLower,
    double SlopeUpper,
    double OneSidedConfidence,
    int DegreesOfFreedom,
    double InterceptVariance,
    double SlopeVariance,
    double? Correlation,
    double ResidualVariance,
    VarianceBoundary Boundary,
    double RestrictedLogLikelihood,
    double? CorrectedInformation
);

/// <summary>Where a fit of variances ended.</summary>
public enum VarianceBoundary
{
    /// <summary>Every variance is above zero and the correlation between −1 and 1.</summary>
    None,

    /// <summary>The slopes do not differ more than the results' own scatter explains.</summary>
    NoSlopeVariance,

    /// <summary>The levels do not differ more than the results' own scatter explains.</summary>
    NoInterceptVariance,

    /// <summary>Level and slope are tied to each other, correlation −1 or 1.</summary>
    FullCorrelation,
}

/// <summary>The results of one specimen.</summary>
/// <param name="Growth">g of each result: f(t) of the declared shape at its actual delay.</param>
/// <param name="Response">The results, or their logarithms, one for each g.</param>
public sealed record SpecimenResponses(
    System.Collections.Immutable.ImmutableArray<double> Growth,
    System.Collections.Immutable.ImmutableArray<double> Response
)
{
    /// <summary>Whether there are results at so many different delays.</summary>
    internal bool HasDelays(int number)
    {
        var found = 0;
        for (var i = 0; i < Growth.Length && found < number; i++)
        {
            found += Growth.AsSpan()[..i].Contains(Growth[i]) ? 0 : 1;
        }

        return found >= number;
    }
}
