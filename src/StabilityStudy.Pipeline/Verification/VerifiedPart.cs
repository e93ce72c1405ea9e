using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>What came of one part of a verification. The zero member is the cautious one.</summary>
public enum PartOutcome
{
    /// <summary>Something is wrong.</summary>
    Fails,

    /// <summary>Nothing is wrong as far as it could be checked, and something could not.</summary>
    NotChecked,

    /// <summary>It was checked and holds.</summary>
    Holds,
}

/// <summary>One part of a verification, in words.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="Sentences">What was found, most important first.</param>
public sealed record VerifiedPart(
    string Question,
    PartOutcome Outcome,
    ImmutableArray<string> Sentences
)
{
    internal static VerifiedPart Holds(string question, params ImmutableArray<string> sentences) =>
        new(question, PartOutcome.Holds, sentences);

    internal static VerifiedPart Fails(string question, params ImmutableArray<string> sentences) =>
        new(question, PartOutcome.Fails, sentences);

    internal static VerifiedPart Of(string question, IEnumerable<(PartOutcome, string)> findings)
    {
        var all = findings.ToImmutableArray();
        return new VerifiedPart(
            question,
            all.Select(item => item.Item1).DefaultIfEmpty(PartOutcome.Holds).Min(),
            [.. all.OrderBy(item => item.Item1).Select(item => item.Item2)]
        );
    }
}

/// <summary>The verification of a report, in four parts, or of a protocol document or notice, each part for itself.</summary>
/// <param name="StudyCode">Code of the study, or what a notice is about; null where the file is none of these.</param>
/// <param name="InputDigest">Digest of its inputs.</param>
/// <param name="Conclusions">The conclusions as they were computed again, a line a sequence; empty when that failed.</param>
/// <param name="Parts">Signatures, revisions, recomputation, lock; of another document signatures, revisions, pages, and where a signature names it the record.</param>
public sealed record ReportVerification(
    string? StudyCode,
    string? InputDigest,
    ImmutableArray<string> Conclusions,
    ImmutableArray<VerifiedPart> Parts
)
{
    /// <summary>The decision that right signatures state, the strictest where there are several; null where none does.</summary>
    public SignedDecision? Decision { get; init; }

    /// <summary>The outcome of the signatures in the words of ETSI EN 319 102-1: TOTAL-PASSED, TOTAL-FAILED or INDETERMINATE; null where nobody has signed.</summary>
    public string? Indication { get; init; }

    /// <summary>What the file is. The digest of a protocol document or notice is the SHA-256 of the file that it carries.</summary>
    public DocumentKind Document { get; init; }

    /// <summary>What a notice says; null for another document.</summary>
    public Notice? Notice { get; init; }

    /// <summary>The study as this version computes it from the file; null where that gives nothing. Without lines of conclusions it is not what the report states.</summary>
    internal StudyAnalysis? Analysis { get; init; }

    /// <summary>Whether signatures are missing, and every one that is there can be read, so that no decision can hide in it.</summary>
    internal bool LacksSignatures { get; init; }

    /// <summary>Whether it says that a later version of the program made it, so that nothing of what it states could be checked.</summary>
    internal bool IsOfLaterVersion { get; init; }

    /// <summary>When the first signature that is right was made, by the clock of its signer; null without one, and for a report.</summary>
    internal DateTimeOffset? FirstSignedAt { get; init; }

    /// <summary>The worst of the parts.</summary>
    public PartOutcome Outcome => Parts.Min(part => part.Outcome);
}

/// <summary>A decision as a right signature states it.</summary>
/// <param name="Decision">The decision.</param>
/// <param name="By">Printed name of the signer.</param>
/// <param name="Meaning">What the signature means.</param>
/// <param name="At">When it was signed, by the signer's clock.</param>
/// <param name="Lines">What is decided on each row and on which terms, in words; empty for a decision on all rows at once.</param>
/// <param name="Headline">The decision as a whole, in words, with who decided.</param>
public sealed record SignedDecision(
    ApproverDecision Decision,
    string By,
    string Meaning,
    DateTimeOffset? At,
    ImmutableArray<string> Lines,
    string Headline
);
