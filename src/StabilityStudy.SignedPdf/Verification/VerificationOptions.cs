using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What a verification may rely on besides the document.</summary>
/// <param name="Anchors">Who is trusted to vouch for signers; null when nobody said.</param>
/// <param name="RevocationLists">Lists of revoked certificates and answers about single ones, of any issuers.</param>
public sealed record VerificationOptions(
    TrustAnchors? Anchors,
    ImmutableArray<RevocationStatement> RevocationLists
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

    /// <summary>What the document itself brings; nobody vouches for it but those who signed it.</summary>
    internal DocumentData Stored { get; init; } = DocumentData.None;

    /// <summary>Certificates that may lie on the way to somebody trusted: those beside a signature, and those in the document.</summary>
    internal X509Certificate2Collection Beside(X509Certificate2Collection others) =>
        [.. others, .. Stored.Certificates];

    internal RevocationCheck Revocation(DateTimeOffset time, bool timeIsProven) =>
        new([.. RevocationLists, .. Stored.RevocationLists], time, timeIsProven, Now)
        {
            KnownAt = time,
        };

    /// <summary>What is asked about the authority of a time stamp.</summary>
    /// <param name="time">The stamped time, at which its certificate must have been valid.</param>
    /// <param name="existedAt">When the time stamp existed at the latest, as an archive time stamp proves; null where none does. A revocation after that does not count, and a list that was current then is enough.</param>
    internal RevocationCheck OfTimeStamp(DateTimeOffset time, DateTimeOffset? existedAt) =>
        existedAt is { } proven
            ? Revocation(time, timeIsProven: true) with
            {
                KnownAt = proven,
                TakesCurrent = true,
            }
            : Revocation(time, timeIsProven: false);
}
