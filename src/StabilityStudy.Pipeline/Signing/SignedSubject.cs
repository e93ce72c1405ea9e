using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Kinds of documents that are signed. The zero member is the one that is asked most.</summary>
public enum DocumentKind
{
    /// <summary>A report.</summary>
    Report,

    /// <summary>A protocol document, signed before there are data.</summary>
    Protocol,

    /// <summary>A notice about signed reports or a study.</summary>
    Notice,
}

/// <summary>What people sign, as far as the rules of signing need to know it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Name for files: the study's code, or what a notice is about.</param>
/// <param name="Signatories">Those who sign, in their order, and what their signatures mean.</param>
/// <param name="Digest">What each signature states that it was meant for: the digest of the inputs of a report, the SHA-256 of the attached file of another document.</param>
internal sealed record SignedSubject(
    DocumentKind Kind,
    string Name,
    ImmutableArray<Signatory> Signatories,
    string Digest
)
{
    /// <summary>The analysis in a report; null for another document.</summary>
    public StudyAnalysis? Analysis { get; private init; }

    /// <summary>Whether a report of other rules comes out otherwise under those of this version, so that a decision on its rows cannot be compared.</summary>
    public bool HasOtherRows { get; init; }

    /// <summary>Printed name of the only person who may sign; null where the document names nobody.</summary>
    public string? NamedSigner { get; init; }

    /// <summary>A day that must come after that of the signature; null where there is none.</summary>
    public DateOnly? LaterThanSigned { get; init; }

    /// <summary>A report.</summary>
    public static SignedSubject Of(StudyAnalysis analysis) =>
        new(
            DocumentKind.Report,
            analysis.Protocol.Code,
            analysis.Protocol.Signatories,
            analysis.Identity.InputDigest
        )
        {
            Analysis = analysis,
        };

    /// <summary>When the last result in it was measured; null without one.</summary>
    public DateTimeOffset? LastResult =>
        Analysis is null ? null : SigningRules.LastResult(Analysis);

    /// <summary>What is wrong with a decision on it.</summary>
    public DecisionFault FaultOf(
        Signatory signatory,
        ApproverDecision? decision,
        int format,
        DateOnly signedOn
    ) =>
        Analysis is not null ? DecisionFaults.Of(Analysis, signatory, decision, format, signedOn)
        : decision is null ? DecisionFault.None
        : DecisionFault.NotTheirs;
}
