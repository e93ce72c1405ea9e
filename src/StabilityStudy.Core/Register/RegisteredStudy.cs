namespace StabilityStudy.Core.Register;

/// <summary>How far a study came that has no report. The zero member says least.</summary>
public enum StudyStage
{
    /// <summary>Its protocol document was made.</summary>
    Planned,

    /// <summary>Its protocol was locked.</summary>
    Locked,

    /// <summary>A notice ended it without a conclusion.</summary>
    Ended,
}

/// <summary>A study that the register knows by its protocol, its lock or the notice that ended it.</summary>
/// <param name="Place">The file or folder.</param>
/// <param name="Code">Code of the study.</param>
/// <param name="Stage">How far it came.</param>
public sealed record RegisteredStudy(string Place, string Code, StudyStage Stage)
{
    /// <summary>Day of the lock, or of the signature that ended it; null where there is none.</summary>
    public DateOnly? On { get; init; }

    /// <summary>Why it was ended, or what its protocol document lacks; null for nothing.</summary>
    public string? Why { get; init; }
}
