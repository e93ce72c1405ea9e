namespace StabilityStudy.Core.Protocol;

/// <summary>For what the planned number of specimens holds. The zero member lets fewest count.</summary>
public enum PlannedPer
{
    /// <summary>For each patient group, whatever it was tested with.</summary>
    Group,

    /// <summary>For each patient group on each instrument.</summary>
    Instrument,

    /// <summary>For each patient group at each site.</summary>
    Site,
}
