using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Words for how changes are read and for what intervals are taken over.</summary>
internal static class ReadingWords
{
    /// <summary>From where to where: "since collection".</summary>
    public static string Of(ChangeReading reading) =>
        reading switch
        {
            ChangeReading.AsMeasured => "as measured",
            ChangeReading.SinceCollection => "since collection",
            ChangeReading.RunsBridged => "corrected by the bridging plasma",
            ChangeReading.RunsBridgedSinceCollection =>
                "corrected by the bridging plasma, since collection",
        };

    /// <summary>"by specimens (40)", "by collection days (10)".</summary>
    public static string Over(IntervalSource source) =>
        source switch
        {
            IntervalSource.Specimens => "by specimens",
            IntervalSource.CollectionDays => "by collection days",
            IntervalSource.BaselineRuns => "by baseline runs",
            IntervalSource.DelayedRuns => "by delayed runs",
            IntervalSource.CrossedRuns => "by both kinds of run",
            IntervalSource.Persons => "by persons",
        };
}
