using StabilityStudy.Core.Locking;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>What a clause or a checklist asks for, in which section the answer stands, and what of it is missing.</summary>
/// <param name="Name">The clause, or number and name of the item.</param>
/// <param name="What">What is asked for, in our own words.</param>
/// <param name="Section">Title of the section that answers, or <see cref="EachTimePoint"/>.</param>
/// <param name="Missing">What is missing; null when nothing is.</param>
internal sealed record Requirement(string Name, string What, string Section, string? Missing = null)
{
    public const string EachTimePoint = "The page of each group";

    /// <summary>Several things that are missing as one text; null when none is.</summary>
    public static string? Together(params string?[] missing)
    {
        var texts = missing.OfType<string>().ToImmutableArray();
        return texts.IsEmpty ? null : string.Join("; ", texts);
    }

    /// <summary>What is missing where nothing shows that the criteria came first.</summary>
    public static string? NotLockedBefore(StudyAnalysis analysis) =>
        analysis.Lock.Standing == LockStanding.BeforeFirstCollection
            ? null
            : "no proof that the criteria came before the data";

    /// <summary>What is missing where the protocol was locked before the first collection, and nobody approved the criteria by signature.</summary>
    public static string? NotApprovedBefore(StudyAnalysis analysis) =>
        analysis.Lock
            is { Standing: not LockStanding.BeforeFirstCollection }
                or { Level: LockLevel.ByApprover or LockLevel.ByApproverAndTimeStamp }
            ? null
            : "a protocol document that was signed before the first collection";
}
