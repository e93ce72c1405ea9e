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

    /// <summary>It is older than anything in force allows.</summary>
    TooOld,

    /// <summary>Instrument or lot is none for which the window holds.</summary>
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

    /// <summary>Longest age that may be tested by what is in force; null where nothing says.</summary>
    public TimeSpan? Limit { get; init; }

    /// <summary>The rows from which the answer follows.</summary>
    public ImmutableArray<StandingWindow> From { get; init; } = [];

    /// <summary>The reports that could not be verified.</summary>
    public ImmutableArray<RegisteredReport> NotTrusted { get; init; } = [];

    /// <summary>What the register knows in the place of an analyte or storage that it does not.</summary>
    public ImmutableArray<string> Known { get; init; } = [];
}
