using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>
/// The outcome of the signatures in the three words of ETSI EN 319 102-1 (clause 5.1.3, main status indications), for readers who know other validators. Here alone they are mapped.
/// </summary>
internal static class ValidationIndication
{
    /// <summary>The word; null where nobody has signed.</summary>
    /// <param name="found">The signatures and revisions.</param>
    /// <param name="signatures">What came of the signatures.</param>
    /// <param name="additions">What came of what was added to the file.</param>
    public static string? Of(
        DocumentVerification found,
        PartOutcome signatures,
        PartOutcome additions
    ) =>
        found.Failure is null && found.Signatures.IsEmpty ? null
        : !found.Holds
        || found.Signatures.Any(signature =>
            signature.Chain.Revocation == RevocationOutcome.Revoked
        )
            ? "TOTAL-FAILED"
        : signatures == PartOutcome.Holds && additions == PartOutcome.Holds ? "TOTAL-PASSED"
        // Somebody who is not trusted is no fault of the signature: with another trust store it may pass.
        : "INDETERMINATE";
}
