namespace StabilityStudy.Core.Collecting;

/// <summary>How far a study is at a moment: what was planned, what came, what is due. It shows no change and no conclusion.</summary>
/// <param name="AsOf">The moment.</param>
/// <param name="Days">Days on which specimens were collected.</param>
/// <param name="PlannedDays">Fewest days that the protocol asks for.</param>
/// <param name="Groups">Each patient group.</param>
/// <param name="Tests">Every planned test of the specimens that came.</param>
/// <param name="Ranges">The baselines so far.</param>
/// <param name="CollectedLater">Specimens whose collection lies after the moment: a clock, or a date, is wrong.</param>
public sealed record CollectionInventory(
    DateTimeOffset AsOf,
    int Days,
    int PlannedDays,
    ImmutableArray<GroupInventory> Groups,
    ImmutableArray<PlannedTest> Tests,
    ImmutableArray<BaselineRange> Ranges,
    int CollectedLater
)
{
    /// <summary>Whether no tube is registered.</summary>
    public bool IsEmpty => Groups.All(item => item.Specimens == 0);

    /// <summary>Whether specimens, or results of those that came, are still to come.</summary>
    public bool IsCollecting =>
        Groups.Any(item => item.Usable < item.Planned) || Tests.Any(test => test.IsOpen);
}

/// <summary>One patient group.</summary>
/// <param name="Group">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Planned">Planned number of specimens.</param>
/// <param name="Specimens">Specimens collected.</param>
/// <param name="Unusable">Those of them that have no valid baseline and can get none, so that another may take the place.</param>
public sealed record GroupInventory(
    string Group,
    string Name,
    int Planned,
    int Specimens,
    int Unusable
)
{
    /// <summary>The planned tests of its specimens.</summary>
    public ImmutableArray<PlannedTest> Tests { get; init; } = [];

    /// <summary>Specimens that count, or can still come to count, towards the planned number.</summary>
    public int Usable => Specimens - Unusable;

    /// <summary>How many tests stand so.</summary>
    public int Count(TestStanding standing) => Tests.Count(test => test.Standing == standing);
}

/// <summary>The valid baselines of an analyte in a patient group so far, held against the plan.</summary>
/// <param name="Analyte">Analyte.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Count">How many are numbers.</param>
/// <param name="Lowest">The lowest; null without one.</param>
/// <param name="Highest">The highest; null without one.</param>
/// <param name="Planned">The planned span; null where the protocol states none.</param>
/// <param name="Levels">The levels that criteria judge there.</param>
public sealed record BaselineRange(
    string Analyte,
    string Group,
    int Count,
    decimal? Lowest,
    decimal? Highest,
    PlannedRange? Planned,
    ImmutableArray<LevelSoFar> Levels
);

/// <summary>Baselines on either side of a level.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Below">Baselines below it.</param>
/// <param name="Above">Baselines above it.</param>
/// <param name="Wanted">How many are wanted on either side.</param>
public sealed record LevelSoFar(decimal Level, int Below, int Above, int Wanted);
