namespace StabilityStudy.Core.Protocol;

/// <summary>Specimens to which a conclusion applies.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Name">Name in the report.</param>
/// <param name="Specimens">Planned number of specimens.</param>
/// <param name="BaselineSpunWithin">Longest time from collection to spinning of the baseline tube; null when not limited.</param>
public sealed record PatientGroup(
    string Id,
    string Name,
    int Specimens,
    TimeSpan? BaselineSpunWithin
)
{
    /// <summary>Why so many specimens are planned; null when not stated.</summary>
    public string? WhySoMany { get; init; }

    /// <summary>The anticoagulant of its patients; null when not stated.</summary>
    public Anticoagulant? Anticoagulant { get; init; }
}

/// <summary>The anticoagulant of the patients of a group. The zero member is the cautious one.</summary>
public enum Anticoagulant
{
    /// <summary>Unfractionated or low-molecular-weight heparin: the change while blood waits grows with the level.</summary>
    Heparin,

    /// <summary>A vitamin K antagonist.</summary>
    VitaminKAntagonist,

    /// <summary>None.</summary>
    None,

    /// <summary>Another one.</summary>
    Other,
}

/// <summary>Which specimens may be used.</summary>
/// <param name="FillPercentMinimum">Least fill of a tube, percent of nominal; null when not limited.</param>
/// <param name="HematocritPercentMaximum">Highest hematocrit, percent; null when not limited.</param>
/// <param name="RejectClot">Whether a clotted baseline tube makes the specimen unusable.</param>
/// <param name="Source">Where these rules come from.</param>
public sealed record Eligibility(
    decimal? FillPercentMinimum,
    decimal? HematocritPercentMaximum,
    bool RejectClot,
    string Source
);
