namespace StabilityStudy.Core.Specimens;

/// <summary>What a flag of the instrument means for the result beside it.</summary>
public enum FlagMeaning
{
    /// <summary>The test failed.</summary>
    Failed,

    /// <summary>The result is reported with a note.</summary>
    ReportableWithNote,

    /// <summary>The flag says nothing against the result, such as a mark for high or low.</summary>
    Harmless,
}
