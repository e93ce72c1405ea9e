namespace StabilityStudy.Statistics.Location;

/// <summary>What an interval of a mean is taken over, and so what its error can come from. The widest interval decides, so no member is safer than another.</summary>
public enum IntervalSource
{
    /// <summary>The values themselves.</summary>
    Specimens,

    /// <summary>The means of collection days.</summary>
    CollectionDays,

    /// <summary>The means of the runs in which baselines were tested.</summary>
    BaselineRuns,

    /// <summary>The means of the runs in which delayed results were tested.</summary>
    DelayedRuns,

    /// <summary>Baseline runs and delayed runs together, where they cross.</summary>
    CrossedRuns,

    /// <summary>The means of persons of whom some gave more than one value.</summary>
    Persons,
}
