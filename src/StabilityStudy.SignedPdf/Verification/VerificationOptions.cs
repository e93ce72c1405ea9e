using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What a verification may rely on besides the document.</summary>
/// <param name="Anchors">Who is trusted to vouch for signers; null when nobody said.</param>
/// <param name="RevocationLists">Lists of revoked certificates, of any issuers.</param>
public sealed record VerificationOptions(
    TrustAnchors? Anchors,
    ImmutableArray<RevocationList> RevocationLists
)
{
    /// <summary>Nobody is trusted: chains are not checked.</summary>
    public static VerificationOptions WithoutTrust { get; } = new(null, []);

    /// <summary>Who is trusted to vouch for time-stamp authorities; null when nobody said. Whoever vouches for signers does not vouch for the time.</summary>
    public TrustAnchors? TimeAnchors { get; init; }

    /// <summary>When is verified; null when nobody said, and what lies in the future then is not known.</summary>
    public DateTimeOffset? Now { get; init; }

    /// <summary>What was given and could not be used, a sentence each: what it would have said is not known.</summary>
    public ImmutableArray<string> UnreadFiles { get; init; } = [];

    internal RevocationCheck Revocation(DateTimeOffset time, bool timeIsProven) =>
        new(RevocationLists, time, timeIsProven, Now);
}
