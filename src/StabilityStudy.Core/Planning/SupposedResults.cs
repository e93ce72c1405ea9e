namespace StabilityStudy.Core.Planning;

/// <summary>How the results of a time point are supposed to arise, before there are any.</summary>
/// <param name="Conduct">Days and runs of the specimens.</param>
/// <param name="SameRun">Whether both results of each specimen come from one run, whose error they then share.</param>
/// <param name="BaselineMedian">Median of the true baselines, in the analyte's unit, above zero.</param>
/// <param name="BaselineLogSd">SD of their natural logarithms: 0.15 is 15 % to first order; 0 for baselines all alike.</param>
/// <param name="SpecimenSdPercent">SD of the true change among specimens, percent of the baseline, counted from where the protocol counts.</param>
/// <param name="RepeatCvPercent">Imprecision of one reported result within its run, percent.</param>
/// <param name="RunSdPercent">SD of what a run adds to all its results, percent; plays no part in one run.</param>
public sealed record SupposedResults(
    SupposedConduct Conduct,
    bool SameRun,
    double BaselineMedian,
    double BaselineLogSd,
    double SpecimenSdPercent,
    double RepeatCvPercent,
    double RunSdPercent
)
{
    /// <summary>True baselines by parts of their range, for the first specimens in turn and evenly on a logarithmic scale; specimens beyond their number, and all where there are none, are drawn by median and SD.</summary>
    public ImmutableArray<SupposedBaselines> Parts { get; init; } = [];

    /// <summary>The part of a specimen; null for one drawn by median and SD.</summary>
    internal SupposedBaselines? PartOf(int specimen)
    {
        foreach (var part in Parts)
        {
            if (specimen < part.Specimens)
            {
                return part;
            }

            specimen -= part.Specimens;
        }

        return null;
    }

    /// <summary>SD of one change to first order, imprecision of both results and what their runs add included, percent.</summary>
    internal double TotalSdPercent =>
        Math.Sqrt(
            (SpecimenSdPercent * SpecimenSdPercent)
                + (2 * RepeatCvPercent * RepeatCvPercent)
                + (SameRun ? 0 : 2 * RunSdPercent * RunSdPercent)
        );
}

/// <summary>True baselines in a part of their range.</summary>
/// <param name="Lowest">Lowest, in the unit of the analyte, above zero.</param>
/// <param name="Highest">Highest.</param>
/// <param name="Specimens">How many specimens.</param>
public sealed record SupposedBaselines(double Lowest, double Highest, int Specimens);
