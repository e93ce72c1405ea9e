using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Checks what is asked for, before the document is looked at.</summary>
internal static class RequestCheck
{
    public static SigningRefusal? CertificateRefusal(
        CertificateFacts certificate,
        DateTimeOffset time
    ) => certificate.ProblemAt(time) is { } problem ? Refusal(problem) : null;

    private static SigningRefusal Refusal(SigningKeyProblem problem) =>
        problem switch
        {
            SigningKeyProblem.NotYetValid => new(
                SigningRefusalReason.CertificateNotYetValid,
                "The certificate becomes valid only later."
            ),
            SigningKeyProblem.Expired => new(
                SigningRefusalReason.CertificateExpired,
                "The certificate is no longer valid."
            ),
            SigningKeyProblem.KeyUsageLacksSigning => new(
                SigningRefusalReason.KeyUsageLacksSigning,
                "The certificate does not allow signing."
            ),
            SigningKeyProblem.Unreadable
            or SigningKeyProblem.PassphraseNeeded
            or SigningKeyProblem.WrongPassphrase
            or SigningKeyProblem.NoCertificate
            or SigningKeyProblem.NoPrivateKey
            or SigningKeyProblem.KeyDoesNotMatch
            or SigningKeyProblem.KeyNotSupported => throw new InvalidOperationException(
                "A key that was read has another problem."
            ),
        };

    public static string? MissingCharacter(SignatureStamp stamp) =>
        stamp
            .AllLines.Select(line => stamp.Font.FirstMissing(line.Text))
            .FirstOrDefault(static missing => missing is not null);

    public static void CheckStamp(SignatureStamp stamp)
    {
        if (
            stamp.Lines.IsDefaultOrEmpty
            || stamp.Parts.Any(static part => part.Lines.IsDefaultOrEmpty)
            || stamp.AllLines.Any(static line => !(line.Size > 0))
        )
        {
            throw new ArgumentException(
                "A stamp needs lines, each of a size above 0.",
                nameof(stamp)
            );
        }
    }
}
