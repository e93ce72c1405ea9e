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

    /// <summary>"by collection days", or "by collection days, baseline runs, delayed runs" where these part the specimens alike.</summary>
    public static string Over(params ImmutableArray<IntervalSource> sources) =>
        "by " + string.Join(", ", sources.Select(Name));

    private static string Name(IntervalSource source) =>
        source switch
        {
            IntervalSource.Specimens => "specimens",
            IntervalSource.CollectionDays => "collection days",
            IntervalSource.BaselineRuns => "baseline runs",
            IntervalSource.DelayedRuns => "delayed runs",
            IntervalSource.CrossedRuns => "both kinds of run",
            IntervalSource.Persons => "persons",
        };
}
