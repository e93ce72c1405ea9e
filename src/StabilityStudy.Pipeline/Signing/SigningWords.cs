using StabilityStudy.Core.Protocol;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Why something could not be signed, in words that say what to do.</summary>
public static class SigningWords
{
    /// <summary>Why a document was not signed.</summary>
    public static string Of(SigningRefusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return refusal.Reason switch
        {
            SigningRefusalReason.EarlierSignatureBroken =>
                "An earlier signature does not hold, or something else than signing was done to the file: \"stability-study verify\" says what. Sign a copy that holds.",
            SigningRefusalReason.CertificateNotYetValid => Of(SigningKeyProblem.NotYetValid),
            SigningRefusalReason.CertificateExpired => Of(SigningKeyProblem.Expired),
            SigningRefusalReason.KeyUsageLacksSigning => Of(SigningKeyProblem.KeyUsageLacksSigning),
            SigningRefusalReason.CharacterNotInFont => refusal.What
                + " Give the printed name with other letters (--name).",
            SigningRefusalReason.TimeStampUnavailable =>
                "The time-stamp authority gave no answer. Nothing was signed.",
            SigningRefusalReason.TimeStampInvalid =>
                "The answer of the time-stamp authority is no time stamp of this signature: "
                    + refusal.What,
            SigningRefusalReason.DocumentUnreadable
            or SigningRefusalReason.DocumentNotPrepared
            or SigningRefusalReason.FieldUnknown
            or SigningRefusalReason.FieldAlreadySigned
            or SigningRefusalReason.SignatureTooLarge
            or SigningRefusalReason.ResultDoesNotVerify => refusal.What,
        };
    }

    /// <summary>Why a decision may not be signed; null when it may.</summary>
    internal static string? Of(DecisionFault fault, Signatory signatory) =>
        fault switch
        {
            DecisionFault.None => null,
            DecisionFault.Missing =>
                $"The {signatory.Role} decides: say with --decision whether the conclusion is approved or declined.",
            DecisionFault.NotTheirs => $"The {signatory.Role} does not decide on the conclusion.",
            DecisionFault.WithoutReason =>
                "Say with --reason why it is declined, or why a window is shorter than supported.",
            DecisionFault.TooLong =>
                "A window is never longer than the evidence supports; where none is supported it is \"none\", or a rule shorter than today's (--interim).",
            DecisionFault.InterimNotShorter =>
                "An interim rule is shorter than today's, for a row without an approved window (--window ROW=none). Where the window itself is approved, give it with --window.",
            DecisionFault.Contradictory =>
                "A window is longer than nothing; for no window write \"none\".",
            DecisionFault.DatesOutOfOrder =>
                "A decision is in force from the day of the signature or later (--effective), and reviewed after that (--review).",
            DecisionFault.PlainWithText =>
                "A plain approval has no reason. A condition is given with --condition, a shorter window with --window.",
            DecisionFault.OtherRows => throw new InvalidOperationException(
                "A decision made here is about the rows of the report."
            ),
        };

    /// <summary>Why a key cannot be used.</summary>
    public static string Of(SigningKeyProblem problem) =>
        problem switch
        {
            SigningKeyProblem.PassphraseNeeded =>
                "The key is protected: give its passphrase with --passphrase-file or in STABILITY_STUDY_PASSPHRASE.",
            SigningKeyProblem.WrongPassphrase => "The passphrase does not open the key.",
            SigningKeyProblem.NoCertificate =>
                "The file holds no certificate: give it with --certificate.",
            SigningKeyProblem.NoPrivateKey => "The file holds no private key.",
            SigningKeyProblem.KeyDoesNotMatch =>
                "The private key belongs to none of the certificates.",
            SigningKeyProblem.KeyNotSupported =>
                "The key is neither RSA of at least 2048 bits nor on the curves P-256, P-384 or P-521, or it is protected in a way that is not known here.",
            SigningKeyProblem.NotYetValid => "The certificate is not valid yet.",
            SigningKeyProblem.Expired => "The certificate is no longer valid.",
            SigningKeyProblem.KeyUsageLacksSigning =>
                "The certificate is not meant for signing documents (its key usage or extended key usage says so).",
            SigningKeyProblem.Unreadable =>
                "The key file is neither PKCS#12 nor PEM, or it is damaged.",
        };
}
