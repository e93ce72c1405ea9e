namespace StabilityStudy.Core.Estimates;

/// <summary>From where to where a change is taken. A criterion is met only if it is in every reading that the study calls for.</summary>
public enum ChangeReading
{
    /// <summary>From the measured baseline to the measured delayed result.</summary>
    AsMeasured,

    /// <summary>From the value at collection, computed from the specimen's own baseline delay, to the measured delayed result.</summary>
    SinceCollection,

    /// <summary>From the measured baseline to the delayed result divided by the shift of the bridging plasma between its two runs.</summary>
    RunsBridged,

    /// <summary>From the value at collection to the bridged delayed result.</summary>
    RunsBridgedSinceCollection,
}
