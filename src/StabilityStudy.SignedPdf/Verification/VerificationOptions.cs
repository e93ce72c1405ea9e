using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What a verification may rely on besides the document.</summary>
/// <param name="Anchors">Who is trusted, for signers and time stamp authorities alike; null when nobody said.</param>
/// <param name="RevocationLists">Lists of revoked certificates, of any issuers.</param>
public sealed record VerificationOptions(
    TrustAnchors? Anchors,
    ImmutableArray<RevocationList> RevocationLists
)
{
    /// <summary>The clock that says what time it is: nothing is signed later than that.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Nobody is trusted: chains are not checked.</summary>
    public static VerificationOptions WithoutTrust { get; } = new(null, []);
}
