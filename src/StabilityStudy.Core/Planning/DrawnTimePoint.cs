namespace StabilityStudy.Core.Planning;

/// <summary>A time point to be drawn, and how far specimens change until then.</summary>
/// <param name="TimePoint">The time point.</param>
/// <param name="MeanPercent">Mean change, percent of the baseline.</param>
/// <param name="SdPercent">Its SD among specimens, percent.</param>
/// <param name="Share">The share of such a change that is there at the time point.</param>
internal sealed record DrawnTimePoint(
    TimePoint TimePoint,
    double MeanPercent,
    double SdPercent,
    double Share = 1
)
{
    /// <summary>The largest fall that is drawn, as a share of the baseline: nothing falls below zero.</summary>
    private const double LeastChange = -0.95;

    /// <summary>The change of a specimen, as a share of the baseline.</summary>
    /// <param name="deviation">By how many SDs the specimen lies from the mean.</param>
    public double ChangeOf(double deviation) =>
        Share * Math.Max(LeastChange, (MeanPercent + (SdPercent * deviation)) / 100);
}
