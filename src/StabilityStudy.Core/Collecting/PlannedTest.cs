namespace StabilityStudy.Core.Collecting;

/// <summary>How a planned test of a tube stands at a moment. The zero member is the cautious one.</summary>
public enum TestStanding
{
    /// <summary>Its time has passed, and there is no result and no reason for its absence.</summary>
    Overdue,

    /// <summary>The time of its collection is in question, so nobody can say when it is due.</summary>
    InQuestion,

    /// <summary>Now is its time.</summary>
    DueNow,

    /// <summary>Its time is still to come.</summary>
    DueLater,

    /// <summary>There is no result, and a reason is stated.</summary>
    Lost,

    /// <summary>There is a result.</summary>
    Tested,

    /// <summary>Its tube was not drawn, or the specimen is tested at other times.</summary>
    NotPlanned,
}

/// <summary>A tube of a specimen at one planned time, for every analyte that is tested from it.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Storage">Storage in which the tube waits; empty for the baseline, which all storages share.</param>
/// <param name="Occasion">Baseline or planned delay.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Earliest">From when on it may be tested.</param>
/// <param name="Latest">Until when.</param>
public sealed record PlannedTest(
    string Specimen,
    string Group,
    string Storage,
    TestOccasion Occasion,
    TestStanding Standing,
    DateTimeOffset Earliest,
    DateTimeOffset Latest
)
{
    /// <summary>The analytes without a row, in the order of the protocol.</summary>
    public ImmutableArray<string> Analytes { get; init; } = [];

    /// <summary>From when on it may be spun so that it can be tested up to the end of its time; null where nothing limits that.</summary>
    public DateTimeOffset? SpinFrom { get; init; }

    /// <summary>Until when it has to be spun; null where nothing limits that.</summary>
    public DateTimeOffset? SpinBy { get; init; }

    /// <summary>Whether a result is still to come.</summary>
    public bool IsOpen =>
        Standing
            is TestStanding.Overdue
                or TestStanding.InQuestion
                or TestStanding.DueNow
                or TestStanding.DueLater;

    /// <summary>Whether a result that is not there is missing.</summary>
    public bool IsAwaited =>
        Standing is TestStanding.InQuestion or TestStanding.DueNow or TestStanding.DueLater;
}
