namespace StabilityStudy.Core.Pairing;

/// <summary>A specimen as all its pairs have it.</summary>
/// <param name="Code">Code of the draw.</param>
/// <param name="Subject">Study code of the person.</param>
/// <param name="At">Time of collection.</param>
public sealed record CollectedSpecimen(string Code, string Subject, DateTimeOffset At)
{
    /// <summary>Day of collection where it took place.</summary>
    public DateOnly Day => DateOnly.FromDateTime(At.DateTime);
}
