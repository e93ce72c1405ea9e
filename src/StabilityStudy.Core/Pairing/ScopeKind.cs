namespace StabilityStudy.Core.Pairing;

/// <summary>What the specimens of a study are told apart by.</summary>
public enum ScopeKind
{
    /// <summary>The instrument of the baseline.</summary>
    Instrument,

    /// <summary>The site at which that instrument stands.</summary>
    Site,
}
