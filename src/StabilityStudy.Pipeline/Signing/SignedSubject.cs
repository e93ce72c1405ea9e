using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>What people sign, as far as the rules of signing need to know it: a report, or a protocol document before any data.</summary>
/// <param name="Protocol">The protocol, with those who sign and what their signatures mean.</param>
/// <param name="Digest">What each signature states that it was meant for: the digest of the inputs of a report, the SHA-256 of protocol.toml of a protocol document.</param>
internal sealed record SignedSubject(StudyProtocol Protocol, string Digest)
{
    /// <summary>The analysis in a report; null for a protocol document.</summary>
    public StudyAnalysis? Analysis { get; private init; }

    /// <summary>Whether a report of other rules comes out otherwise under those of this version, so that a decision on its rows cannot be compared.</summary>
    public bool HasOtherRows { get; init; }

    /// <summary>A report.</summary>
    public static SignedSubject Of(StudyAnalysis analysis) =>
        new(analysis.Protocol, analysis.Identity.InputDigest) { Analysis = analysis };

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
