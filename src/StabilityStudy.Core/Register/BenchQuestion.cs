namespace StabilityStudy.Core.Register;

/// <summary>May this specimen still be tested?</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Day">The day on which it is asked.</param>
public sealed record BenchQuestion(string Analyte, DateOnly Day)
{
    /// <summary>Key of the patient group; null where it is not known.</summary>
    public string? Group { get; init; }

    /// <summary>Key of the storage; null for every one in which the analyte was studied.</summary>
    public string? Storage { get; init; }

    /// <summary>How long it has waited; null where that is not known.</summary>
    public TimeSpan? Waited { get; init; }

    /// <summary>Code of the instrument; null where it is left open.</summary>
    public string? Instrument { get; init; }

    /// <summary>Code of the reagent lot; null where it is left open.</summary>
    public string? Lot { get; init; }

    /// <summary>How old it was when it was spun; null where that is not known.</summary>
    public TimeSpan? Spun { get; init; }

    /// <summary>How old it was when the plasma was taken off the cells; null where it was not, or that is not known.</summary>
    public TimeSpan? Separated { get; init; }

    /// <summary>What is wrong with the tube, such as a clot; null where nothing is.</summary>
    public string? Unfit { get; init; }

    /// <summary>Whether what is left open counts as not true, as for a machine, whose answer nobody reads.</summary>
    public bool CountsOpenAsNotTrue { get; init; }

    /// <summary>The age by which it is judged, rounded up to the whole minute; null where it is not known, or it was collected after the test.</summary>
    internal TimeSpan? Age => Waited >= TimeSpan.Zero ? MayTest.RoundedUp(Waited.Value) : null;

    /// <summary>Whether the plasma was off the cells by some age, as far as that is known and can be true.</summary>
    internal bool WasSeparatedBy(TimeSpan limit) =>
        Separated >= TimeSpan.Zero
        && Separated <= Waited
        && MayTest.RoundedUp(Separated.Value) <= limit;

    /// <summary>Time from the spin to the test, rounded up to the whole minute; null where it is not known. Plasma that is off the cells was spun before.</summary>
    public TimeSpan? SpinToTest =>
        Waited is { } waited && (Spun ?? Separated) is { } spun
            ? MayTest.RoundedUp(waited - spun)
            : null;
}

/// <summary>The answer in a word. The zero member is the cautious one, and a smaller one outweighs a greater.</summary>
public enum BenchVerdict
{
    /// <summary>It is too old, or nobody knows how old it is.</summary>
    DoNotTest,

    /// <summary>The register alone does not answer; until the director does, it is not tested.</summary>
    AskDirector,

    /// <summary>It may be tested.</summary>
    Test,
}

/// <summary>What an answer follows from. The zero member claims nothing.</summary>
public enum BenchReason
{
    /// <summary>The register has no rule for it.</summary>
    NoRule,

    /// <summary>It is not known how long it has waited.</summary>
    TimeUnknown,

    /// <summary>A report that may be about it could not be verified.</summary>
    ReportNotTrusted,

    /// <summary>The tube is unfit, whatever its age.</summary>
    TubeUnfit,

    /// <summary>It is older than anything in force allows.</summary>
    TooOld,

    /// <summary>Instrument, lot or time from spin to test is none for which the window holds.</summary>
    NotCovered,

    /// <summary>A notice that cannot be relied on speaks against the window.</summary>
    NoticeInDoubt,

    /// <summary>The day of the window's review has passed.</summary>
    PastReview,

    /// <summary>A later report leaves today's rule in force, or a later notice withdrew another window, and neither says that it is about the approval too.</summary>
    RefusedLater,

    /// <summary>The decision is a text, which may hold a shorter window.</summary>
    InWordsOnly,

    /// <summary>Two reports mean different storages by one code.</summary>
    TwoStorages,

    /// <summary>The patient group is not known, and no rule for heparin is.</summary>
    NoRuleForHeparin,

    /// <summary>Today's rule allows it.</summary>
    TodaysRule,

    /// <summary>The approved window allows it.</summary>
    ApprovedWindow,
}

/// <summary>The answer to a question at the bench.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Verdict">The answer.</param>
/// <param name="Reason">What it follows from.</param>
public sealed record BenchAnswer(BenchQuestion Question, BenchVerdict Verdict, BenchReason Reason)
{
    /// <summary>The age by which it is judged: rounded up to the whole minute; null where it is not known.</summary>
    public TimeSpan? Age { get; init; }

    /// <summary>Key of the storage that gives the answer; null where there is none.</summary>
    public string? Storage { get; init; }

    /// <summary>Whether the group is one that the rules name.</summary>
    public bool KnowsGroup { get; init; }

    /// <summary>What today's rule allows; null where there is none.</summary>
    public TimeSpan? Today { get; init; }

    /// <summary>Up to which age today's rule allows plasma that was taken off the cells within <see cref="Today"/>, where that was not said; null where it has no second step.</summary>
    public TimeSpan? AsPlasma { get; init; }

    /// <summary>Whether <see cref="Today"/> is that second step, since the plasma was taken off in time.</summary>
    public bool IsSecondStep { get; init; }

    /// <summary>What study shows that the window holds for the instrument or lot that is not covered; null where none is asked for.</summary>
    public RepeatTier? Due { get; init; }

    /// <summary>Longest age that may be tested by what is in force; null where nothing says.</summary>
    public TimeSpan? Limit { get; init; }

    /// <summary>The rows from which the answer follows.</summary>
    public ImmutableArray<StandingWindow> From { get; init; } = [];

    /// <summary>The reports that could not be verified.</summary>
    public ImmutableArray<RegisteredReport> NotTrusted { get; init; } = [];

    /// <summary>What the register knows in the place of an analyte or storage that it does not.</summary>
    public ImmutableArray<KnownCode> Known { get; init; } = [];

    /// <summary>Whether the register has a rule for the analyte.</summary>
    public bool KnowsAnalyte { get; init; }

    /// <summary>The patient groups that the register has for the analyte.</summary>
    public ImmutableArray<KnownCode> Groups { get; init; } = [];
}
