using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Drift;

/// <summary>The mean drift of specimens, from one slope a specimen.</summary>
/// <param name="Shape">How the change is taken to grow with time.</param>
/// <param name="SpecimenCount">Number of specimens with a slope.</param>
/// <param name="LeftOut">Number of specimens without a delay other than that of their baseline, and so without a slope.</param>
/// <param name="Specimens">Their numbers, in the order of the input.</param>
/// <param name="SpecimenSlopes">Their slopes, in percent per unit of f(t).</param>
/// <param name="MeanSlope">
/// Mean slope, with the cluster rule; its two-sided level is 2·<paramref name="OneSidedConfidence"/> − 1, so that either end is the one-sided bound.
/// </param>
/// <param name="OneSidedConfidence">Level of each bound.</param>
/// <param name="BaselineDelayHours">Mean actual baseline delay of the specimens with a slope, in hours since collection.</param>
public sealed record DriftEstimate(
    DriftShape Shape,
    int SpecimenCount,
    int LeftOut,
    ImmutableArray<int> Specimens,
    ImmutableArray<double> SpecimenSlopes,
    ClusteredMeanInterval MeanSlope,
    double OneSidedConfidence,
    double BaselineDelayHours
);
