using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Checks what is asked for, before the document is looked at.</summary>
internal static class RequestCheck
{
    public static SigningResult? KeyRefusal(SignatureRequest request) =>
        request.Key.ProblemAt(request.SigningTime) switch
        {
            null => null,
            SigningKeyProblem.NotYetValid => new(
                SigningRefusalReason.CertificateNotYetValid,
                "The certificate becomes valid only later."
            ),
            SigningKeyProblem.Expired => new(
                SigningRefusalReason.CertificateExpired,
                "The certificate is no longer valid."
            ),
            _ => new(
                SigningRefusalReason.KeyUsageLacksSigning,
                "The certificate does not allow signing."
            ),
        };

    public static string? MissingCharacter(SignatureStamp stamp) =>
        stamp
            .Lines.Select(line => stamp.Font.FirstMissing(line.Text))
            .FirstOrDefault(static missing => missing is not null);

    public static void CheckStamp(SignatureStamp stamp)
    {
        if (stamp.Lines.IsDefaultOrEmpty || stamp.Lines.Any(static line => !(line.Size > 0)))
        {
            throw new ArgumentException(
                "A stamp needs lines, each of a size above 0.",
                nameof(stamp)
            );
        }
    }
}
