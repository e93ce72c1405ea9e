namespace StabilityStudy.Core.Queries;

/// <summary>
/// What a data query means for the decision, the gravest first. What could overturn a *supported* comes first: pairs left
/// out or chosen, results that may not be measurements of their own, runs without control, a change confounded with the
/// delay, a protocol that asks for little. Then what the conclusion already counts, what was not recorded, and last sources
/// and flagged outliers, which stay in every figure. All from <see cref="StatedAnyway"/> to <see cref="Outlier"/> are attentions.
/// </summary>
public enum QueryRank
{
    /// <summary>No report is made until it is answered.</summary>
    Stop,

    /// <summary>Page 1 has a line of its own for it in any case: the lock, what a conclusion rests on, how many were left out, a modified test.</summary>
    StatedAnyway,

    /// <summary>The record of the study, or an amendment of its protocol.</summary>
    Record,

    /// <summary>Pairs left out by a decision that may depend on the result.</summary>
    Exclusion,

    /// <summary>A change before the baseline, which no pair shows.</summary>
    EarlyChange,

    /// <summary>Results measured again, or chosen among several.</summary>
    Rerun,

    /// <summary>Results that may not be measurements of their own.</summary>
    Measurement,

    /// <summary>Tables and columns in the folder that were not read.</summary>
    LeftAside,

    /// <summary>Times that may not be the true ones.</summary>
    Time,

    /// <summary>Specimens that may not stand for those of patients.</summary>
    Specimen,

    /// <summary>Runs that no control vouches for.</summary>
    Control,

    /// <summary>Something else that changed with the delay.</summary>
    Confounding,

    /// <summary>A criterion that asks for little.</summary>
    LaxCriterion,

    /// <summary>A conclusion on one criterion or few days.</summary>
    LittleSupport,

    /// <summary>A protocol that lets in much, or leaves something unseen.</summary>
    LaxConduct,

    /// <summary>What the drift says against a window.</summary>
    Drift,

    /// <summary>Support that ends before today's window.</summary>
    ShorterThanToday,

    /// <summary>Counted as outside the allowable difference already.</summary>
    CountedOutside,

    /// <summary>Done otherwise than planned, or read otherwise than expected.</summary>
    NotAsPlanned,

    /// <summary>Not recorded.</summary>
    NotRecorded,

    /// <summary>Something that changes no figure.</summary>
    WithoutEffect,

    /// <summary>A source of a limit or rule that is no document; page 1 counts these.</summary>
    Source,

    /// <summary>A flagged outlier.</summary>
    Outlier,

    /// <summary>Listed in the report only.</summary>
    Note,

    /// <summary>Listed in the report only, and nothing is to be done.</summary>
    ForTheRecord,
}

/// <summary>What a rank does to the report.</summary>
internal static class RankSeverity
{
    public static Severity Severity(this QueryRank rank) =>
        rank == QueryRank.Stop ? Queries.Severity.Stop
        : rank < QueryRank.Note ? Queries.Severity.Attention
        : Queries.Severity.Note;
}
