namespace StabilityStudy.Core.Specimens;

/// <summary>One container of one draw: a row of specimens.csv.</summary>
/// <param name="SourceRow">Line in the facility's file.</param>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Tube">Code of the container, unique within the specimen.</param>
/// <param name="Subject">Study code of the person.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Storage">State in which the tube waits.</param>
/// <param name="DrawPosition">Order in which the tube was drawn, from 1; null when not recorded.</param>
/// <param name="CollectedAt">Time of collection.</param>
/// <param name="ReceivedAt">Time of receipt; null when not recorded.</param>
/// <param name="SpunAt">Time of spinning; null when not recorded or not spun.</param>
/// <param name="SeparatedAt">Time at which plasma was taken off; null when not.</param>
/// <param name="FrozenAt">Time of freezing; null when not frozen.</param>
/// <param name="ThawedAt">Time of thawing; null when not frozen.</param>
/// <param name="FillPercent">Fill, percent of nominal; null when not recorded.</param>
/// <param name="Inversions">Gentle complete inversions; null when not recorded.</param>
/// <param name="HematocritPercent">Hematocrit, percent; null when not measured.</param>
/// <param name="Hemolysis">Hemolysis seen.</param>
/// <param name="Clot">Whether a clot was seen.</param>
/// <param name="Device">Collection device in words; empty when not recorded.</param>
/// <param name="Origin">Where the blood comes from.</param>
public sealed record TubeRow(
    int SourceRow,
    string Specimen,
    string Tube,
    string Subject,
    string Group,
    string Storage,
    int? DrawPosition,
    DateTimeOffset CollectedAt,
    DateTimeOffset? ReceivedAt,
    DateTimeOffset? SpunAt,
    DateTimeOffset? SeparatedAt,
    DateTimeOffset? FrozenAt,
    DateTimeOffset? ThawedAt,
    decimal? FillPercent,
    int? Inversions,
    decimal? HematocritPercent,
    Hemolysis Hemolysis,
    ClotCheck Clot,
    string Device,
    Origin Origin
)
{
    /// <summary>The discard tube that was filled before the tubes of the draw.</summary>
    public DiscardTube DiscardTube { get; init; }

    /// <summary>What was drawn before, in the same puncture, beside a discard tube.</summary>
    public DrawnBefore DrawnAfter { get; init; }

    /// <summary>How the tube came to the laboratory.</summary>
    public TransportState Transport { get; init; }

    /// <summary>What is in the tube.</summary>
    public SpecimenMaterial Material { get; init; }
}

/// <summary>The discard tube of a draw.</summary>
public enum DiscardTube
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>None was filled.</summary>
    None,

    /// <summary>A citrate tube.</summary>
    Citrate,

    /// <summary>A tube without additive.</summary>
    Plain,

    /// <summary>A tube with another additive, which can be carried over.</summary>
    OtherAdditive,
}

/// <summary>What was drawn before the tubes of a draw, in the same puncture.</summary>
public enum DrawnBefore
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>Nothing but a discard tube.</summary>
    Nothing,

    /// <summary>A blood culture.</summary>
    BloodCulture,

    /// <summary>A tube of another kind, whose additive can be carried over.</summary>
    OtherTube,
}

/// <summary>How a tube came to the laboratory.</summary>
public enum TransportState
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>At room temperature.</summary>
    RoomTemperature,

    /// <summary>Refrigerated, or beside cooling packs.</summary>
    Refrigerated,

    /// <summary>On ice.</summary>
    OnIce,
}

/// <summary>What is in a tube.</summary>
public enum SpecimenMaterial
{
    /// <summary>Not recorded; a study of citrated specimens.</summary>
    NotRecorded,

    /// <summary>Citrated blood, or plasma of it.</summary>
    Citrate,

    /// <summary>Serum: its fibrinogen and several factors are used up.</summary>
    Serum,

    /// <summary>Blood or plasma with another anticoagulant in the tube.</summary>
    OtherAnticoagulant,
}

/// <summary>Hemolysis as graded by eye or index.</summary>
public enum Hemolysis
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>None.</summary>
    None,

    /// <summary>Slight.</summary>
    Slight,

    /// <summary>Moderate.</summary>
    Moderate,

    /// <summary>Gross.</summary>
    Gross,
}

/// <summary>Whether the tube was looked at for a clot, and what was seen.</summary>
public enum ClotCheck
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>No clot.</summary>
    No,

    /// <summary>A clot.</summary>
    Yes,
}

/// <summary>Where the blood or plasma comes from.</summary>
public enum Origin
{
    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>As drawn from the subject.</summary>
    Native,

    /// <summary>A drug or factor was added in the laboratory.</summary>
    Spiked,

    /// <summary>Several subjects' plasma mixed.</summary>
    Pool,
}
