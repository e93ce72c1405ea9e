namespace StabilityStudy.Core.Protocol;

/// <summary>What others found about a change while specimens waited, and what the planned study can then conclude. It plans, and never decides.</summary>
/// <param name="Group">Code of the patient group.</param>
/// <param name="TimePoint">The planned delay.</param>
/// <param name="Percent">Expected mean change, percent of the baseline, counted from where the protocol counts.</param>
/// <param name="Source">Where it was published; that nothing was found is a source too.</param>
/// <param name="Criterion">By what its author called results stable, because windows differ by that several times over; null where a size of change was published.</param>
/// <param name="Chance">The chance of a supported time point with that change.</param>
public sealed record ExpectedChange(
    string Group,
    TimePoint TimePoint,
    decimal Percent,
    string Source,
    string? Criterion,
    ChanceOfSupport Chance
)
{
    /// <summary>Code of the storage; null for every storage of the analyte.</summary>
    public string? Storage { get; init; }

    /// <summary>SD of the change among specimens, percent of the baseline, by which the chance was simulated.</summary>
    public decimal SpecimenSdPercent { get; init; } = 3;

    /// <summary>Why a time point is studied that will hardly be supported; null where nothing has to be explained.</summary>
    public string? Why { get; init; }
}
