using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Whether a certificate is trusted, and why not, for a reader who knows no certificates.</summary>
internal static class TrustWords
{
    /// <summary>What is known about the certificate of somebody who signed.</summary>
    /// <param name="subject">The certificate, as the beginning of a sentence.</param>
    /// <param name="certificate">The certificate.</param>
    /// <param name="chain">The way from it to somebody trusted.</param>
    /// <param name="proven">When it was signed at the latest, as a trusted time stamp shows; null when none does.</param>
    /// <param name="options">Whom to trust, and when is verified.</param>
    public static IEnumerable<(PartOutcome, string)> OfSigner(
        string subject,
        CertificateFacts certificate,
        ChainVerification chain,
        DateTimeOffset? proven,
        VerificationOptions options
    ) =>
        [
            .. Of(subject, chain, new Store("trust store", "--trust", "")),
            .. Expired(
                certificate,
                chain,
                proven,
                options,
                "it was valid at the claimed time only, and no trusted time stamp shows that the signature was made before then"
            ),
        ];

    /// <summary>What is known about the certificate of a time-stamp authority.</summary>
    /// <param name="subject">The certificate, as the beginning of a sentence.</param>
    /// <param name="stamp">The time stamp.</param>
    /// <param name="options">Whom to trust, and when is verified.</param>
    public static IEnumerable<(PartOutcome, string)> OfAuthority(
        string subject,
        TimeStampVerification stamp,
        VerificationOptions options
    ) =>
        [
            .. Of(
                subject,
                stamp.Chain,
                new Store(
                    "trust store for time-stamp authorities",
                    "--trust-time",
                    "; its time counts as claimed only"
                )
            ),
            .. Expired(
                stamp.Authority,
                stamp.Chain,
                stamp.ExistedAt,
                options,
                "it was valid at the stamped time only, and nothing else shows that the time stamp was made before then"
            ),
        ];

    private static IEnumerable<(PartOutcome, string)> Of(
        string subject,
        ChainVerification chain,
        Store store
    ) =>
        (chain.Outcome, chain.Revocation) switch
        {
            (_, RevocationOutcome.Revoked) =>
            [
                (
                    PartOutcome.Fails,
                    $"{subject} cannot be relied on: it, or one that it depends on, was revoked ({Time(chain.RevokedAt)})."
                ),
            ],
            (ChainOutcome.Trusted, _) =>
            [
                (
                    PartOutcome.Holds,
                    chain.Revocation == RevocationOutcome.NotRevoked
                        ? $"{subject} is trusted by the given {store.Name} and was not revoked."
                        : $"{subject} is trusted by the given {store.Name}."
                ),
                .. chain.RevocationFaults.Select(fault =>
                    (PartOutcome.NotChecked, $"{subject}: {Of(fault)}.")
                ),
            ],
            (ChainOutcome.NotTrusted, _) =>
            [
                (
                    PartOutcome.Fails,
                    $"{subject} is not trusted by the given {store.Name}: {string.Join("; ", chain.Faults.Select(fault => Of(fault, store.Option)))}."
                ),
            ],
            (ChainOutcome.NotChecked, _) =>
            [
                (
                    PartOutcome.NotChecked,
                    $"{subject} is not checked, because no {store.Name} was given ({store.Option}){store.Unchecked}."
                ),
            ],
        };

    private static IEnumerable<(PartOutcome, string)> Expired(
        CertificateFacts certificate,
        ChainVerification chain,
        DateTimeOffset? proven,
        VerificationOptions options,
        string what
    ) =>
        chain
            .Certificates.Prepend(certificate)
            .Where(item => item.NotAfter < options.Now && !(proven <= item.NotAfter))
            .Distinct()
            .Select(item =>
                (
                    PartOutcome.NotChecked,
                    $"The certificate of {item.Name} expired on {Time(item.NotAfter)}: {what}."
                )
            );

    /// <summary>Why a certificate is not trusted.</summary>
    /// <param name="fault">What is wrong.</param>
    /// <param name="option">The option that gives a trust store.</param>
    public static string Of(ChainFault fault, string option)
    {
        var (name, issuer) = (fault.Certificate.Name, fault.Certificate.Issuer);
        return fault.Problem switch
        {
            ChainProblem.IssuerMissing =>
                $"the trust store lacks the certificate of the issuer {issuer}: give the root certificate of {issuer} with {option}, and any certificate between it and that of {name}",
            ChainProblem.NotInTrustStore =>
                $"{name} vouches for itself and is not in the trust store: if you trust {name}, get the certificate by another way than this file and give it with {option}",
            ChainProblem.NotValidThen =>
                $"the certificate of {name} is valid from {Time(fault.Certificate.NotBefore)} to {Time(fault.Certificate.NotAfter)}, and was not at the time in question",
            ChainProblem.NotSignedByIssuer =>
                $"the certificate of {name} is not signed by the issuer that it names, {issuer}",
            ChainProblem.ForOtherUses => $"the certificate of {name} is meant for other uses",
            ChainProblem.IssuerNotEntitled =>
                $"the certificate of {name} breaks a rule on who may issue certificates, for which names or under which policies",
            ChainProblem.NotUnderstood =>
                $"the certificate of {name} is malformed, or asks for something that is not known here",
            ChainProblem.Revoked => $"the certificate of {name} was revoked",
            ChainProblem.RevocationUnknown =>
                $"whether the certificate of {name} was revoked is not known",
            ChainProblem.Distrusted =>
                $"the certificate of {name} has been declared not to be trusted",
            ChainProblem.KeyNotStrong =>
                $"the certificate of {name} has a key that is too short or of another kind than is accepted: {KeyRule}",
            ChainProblem.SignatureNotStrong =>
                $"the certificate of {name} was issued with a method that is no longer safe, as with MD5 or SHA-1, or is not known here",
            ChainProblem.Other =>
                $"the certificate of {name} is refused by the operating system of this computer",
        };
    }

    /// <summary>Which keys are accepted.</summary>
    public const string KeyRule =
        "RSA needs at least 2048 bits, a curve must be P-256, P-384 or P-521";

    /// <summary>Why nothing shows that a certificate was not revoked.</summary>
    public static string Of(RevocationFault fault)
    {
        var certificate = fault.Certificate;
        if (fault.List is not { } list)
        {
            return $"whether the certificate of {certificate.Name} was revoked was not checked: ask its issuer {certificate.Issuer} for the list of revoked certificates and give it with --revoked";
        }

        var why = fault.Problem switch
        {
            RevocationListProblem.OfAnotherIssuer when list is RevocationAnswer =>
                "is about another certificate",
            RevocationListProblem.OfAnotherIssuer =>
                $"is of another issuer than the certificate, {certificate.Issuer}",
            RevocationListProblem.NotSignedByIssuer =>
                "is not signed by that issuer, or with a key that may not sign lists",
            RevocationListProblem.SignatureNotStrong =>
                "is signed with a method that is no longer safe, as with MD5 or SHA-1, or is not known here",
            RevocationListProblem.MadeBefore =>
                "was made before the time in question: give a later one",
            RevocationListProblem.OutOfDate when list.NextUpdate is { } due =>
                $"was to be replaced by {Time(due)}, and no trusted time stamp shows when was signed: give the newest one",
            RevocationListProblem.OutOfDate =>
                "does not say until when it counts, and no trusted time stamp shows when was signed",
            RevocationListProblem.MadeAfterExpiry =>
                "was made after the certificate expired, when issuers leave it out",
            RevocationListProblem.MadeInFuture =>
                "is dated after this verification: its clock or that of this computer is wrong",
            RevocationListProblem.NotKnownToIssuer => "says that the certificate is not known",
            RevocationListProblem.Missing => "is missing",
        };
        return $"whether the certificate of {certificate.Name} was revoked is not known: {Named(list)} {why}";
    }

    /// <summary>The lists and answers that are about nothing in these chains, so that nobody believes they were asked.</summary>
    public static IEnumerable<(PartOutcome, string)> NotAsked(
        IEnumerable<ChainVerification> chains,
        VerificationOptions options
    )
    {
        var certificates = chains.SelectMany(chain => chain.Certificates).ToList();
        return options
            .RevocationLists.Where(statement =>
                !certificates.Exists(certificate =>
                    statement is RevocationAnswer answer
                        ? certificate.SerialNumber == answer.SerialNumber
                        : certificate.Subject == statement.Issuer
                )
            )
            .Select(statement =>
                (
                    PartOutcome.Holds,
                    statement is RevocationAnswer
                        ? $"T{Named(statement)[1..]} is about no certificate of these signatures and their time stamps, and says nothing about them."
                        : $"T{Named(statement)[1..]} is of no issuer of these signatures and their time stamps, and says nothing about them."
                )
            );
    }

    private static string Named(RevocationStatement statement) =>
        statement is RevocationAnswer
            ? $"the answer about a certificate by {statement.Issuer} of {Time(statement.ThisUpdate)} (OCSP)"
            : $"the list of revoked certificates by {statement.Issuer} of {Time(statement.ThisUpdate)}";

    /// <summary>A moment to the second, with its offset.</summary>
    public static string Time(DateTimeOffset? time) =>
        time?.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture)
        ?? "an unknown time";

    /// <summary>A trust store in words.</summary>
    /// <param name="Name">What it is.</param>
    /// <param name="Option">The option that gives it.</param>
    /// <param name="Unchecked">What follows where it is not given.</param>
    private sealed record Store(string Name, string Option, string Unchecked);
}
