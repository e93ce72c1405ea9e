using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>
/// What the program asks of those who sign, asked again of a signed report: another program, or a changed one, can put
/// right signatures of trusted people where these rules forbid them.
/// </summary>
internal static class SigningRules
{
    /// <summary>What breaks a rule, or cannot be told, about who signed where and when, whatever the signature states.</summary>
    /// <param name="signature">A signature that is right.</param>
    /// <param name="subject">What is signed.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OfSigner(
        SignatureVerification signature,
        SignedSubject subject
    )
    {
        var place = SignatoryFields.SignatoryOf(subject.Signatories, signature.FieldName);
        if (place is null)
        {
            yield return (PartOutcome.Fails, "no signatory of the document signs in this field");
        }
        else if (signature.Reason != SignatoryFields.MeaningOf(place))
        {
            yield return (
                PartOutcome.Fails,
                $"the meaning of this signature is not that of the protocol, \"{SignatoryFields.MeaningOf(place)}\""
            );
        }

        if (subject.LaterThanSigned is { } day && day <= DayOf(signature))
        {
            yield return (
                PartOutcome.Fails,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"signed on or after the day of the next review, {day:yyyy-MM-dd}"
                )
            );
        }

        if (subject.LastResult is { } last && signature.ClaimedTime < last)
        {
            yield return (
                PartOutcome.Fails,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"signed before the last result in the report was measured ({last:yyyy-MM-dd HH:mm zzz}), by the clock of the signer"
                )
            );
        }

        if (signature.SignerName is not { } printed)
        {
            yield return (PartOutcome.Fails, "the signature states no name");
            yield break;
        }

        if (subject.NamedSigner is { } named && printed != named)
        {
            yield return (PartOutcome.Fails, $"the notice is to be signed by {named}");
        }

        if (signature.Signer is { } certificate && printed != certificate.Name)
        {
            yield return (
                PartOutcome.NotChecked,
                $"signed with the certificate of {certificate.Name}; whether that is the same person, nothing in the file shows"
            );
        }

        if (
            subject.Analysis is { } analysis
            && !analysis.Facts.People.Any(person => person.Name == printed)
        )
        {
            yield return (
                PartOutcome.Holds,
                $"the printed name is not among the people of {StudyBytes.FactsName}"
            );
        }
    }

    /// <summary>What breaks a rule about what one signature that is right states.</summary>
    /// <param name="signature">The signature.</param>
    /// <param name="statement">What it states.</param>
    /// <param name="subject">What is signed.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OfStatement(
        SignatureVerification signature,
        SignedStatement statement,
        SignedSubject subject
    )
    {
        if (statement.InputDigest != subject.Digest)
        {
            yield return (
                PartOutcome.Fails,
                subject.Kind switch
                {
                    DocumentKind.Report => "the signature was meant for another study",
                    DocumentKind.Protocol => "the signature was meant for another protocol",
                    DocumentKind.Notice => "the signature was meant for another notice",
                }
            );
        }

        var place = SignatoryFields.SignatoryOf(subject.Signatories, signature.FieldName);
        if (place is not null && place.Role != statement.Role)
        {
            yield return (
                PartOutcome.Fails,
                $"signed in the place of the {place.Role}, and says to sign as {statement.Role}"
            );
        }
        else if (place is not null && Judge(subject, place, statement, signature) is { } finding)
        {
            yield return finding;
        }
    }

    /// <summary>A version that did not make the report signs only what its signatory accepted as not computed again.</summary>
    /// <param name="statement">What the signature states.</param>
    /// <param name="madeBy">The version that made the document; null where that is not known.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OfVersions(
        SignedStatement statement,
        string? madeBy
    )
    {
        if (madeBy is null || statement.ToolVersion == madeBy)
        {
            yield break;
        }

        yield return statement.AcceptedNotRecomputed.IsEmpty
            ? (
                PartOutcome.Fails,
                $"signed with version {statement.ToolVersion} over a document of version {madeBy} without accepting what could not be computed again"
            )
            : (
                PartOutcome.Holds,
                $"signed with version {statement.ToolVersion} over a document of version {madeBy}, and accepted as not computed again: {string.Join("; ", statement.AcceptedNotRecomputed)}"
            );
    }

    /// <summary>Roles whose turn is before that of a signature, and who had not signed when it was made.</summary>
    /// <param name="signature">The signature.</param>
    /// <param name="before">Those before it in the file.</param>
    /// <param name="signatories">Who signs in which order.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OutOfTurn(
        SignatureVerification signature,
        IEnumerable<SignatureVerification> before,
        ImmutableArray<Signatory> signatories
    )
    {
        if (SignatoryFields.SignatoryOf(signatories, signature.FieldName) is not { } place)
        {
            yield break;
        }

        var signed = before.Select(item => item.FieldName).ToImmutableHashSet();
        var index = signatories.IndexOf(place);
        for (var i = 0; i < index; i++)
        {
            if (!signed.Contains(SignatoryFields.NameOf(i)))
            {
                yield return (
                    PartOutcome.Fails,
                    $"signed out of turn: the {signatories[i].Role} signs before the {place.Role}"
                );
            }
        }
    }

    /// <summary>What breaks a rule, or cannot be told, about one signature beside those before it.</summary>
    public static IEnumerable<(PartOutcome Outcome, string What)> Beside(
        SignatureVerification signature,
        IEnumerable<SignatureVerification> before
    )
    {
        foreach (var earlier in before.Where(item => item.Holds))
        {
            if (signature.Signer?.PublicKeySha256 == earlier.Signer?.PublicKeySha256)
            {
                yield return (
                    PartOutcome.Fails,
                    $"the same key has signed before ({earlier.Reason}), and two people must"
                );
            }
            else if (
                string.Equals(
                    signature.Signer?.Name,
                    earlier.Signer?.Name,
                    StringComparison.OrdinalIgnoreCase
                )
            )
            {
                yield return (
                    PartOutcome.NotChecked,
                    $"another certificate of that name has signed before ({earlier.Reason}); whether they are two people, nothing in the file shows"
                );
            }

            if (signature.ClaimedTime < earlier.ClaimedTime)
            {
                yield return (
                    PartOutcome.NotChecked,
                    $"signed at an earlier time than the signature before it ({earlier.Reason}), by the clocks of the two signers"
                );
            }
        }
    }

    private static DateOnly DayOf(SignatureVerification signature) =>
        DateOnly.FromDateTime((signature.ClaimedTime ?? DateTimeOffset.MinValue).DateTime);

    /// <summary>When the last result of the study was measured; null without one.</summary>
    public static DateTimeOffset? LastResult(StudyAnalysis analysis) =>
        analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .SelectMany(pair => new[] { pair.Baseline?.TestedAt, pair.Delayed?.TestedAt })
            .Max();

    private static (PartOutcome, string)? Judge(
        SignedSubject subject,
        Signatory signatory,
        SignedStatement statement,
        SignatureVerification signature
    )
    {
        var fault = subject.FaultOf(
            signatory,
            statement.Decision,
            statement.Format,
            DayOf(signature)
        );
        return subject.HasOtherRows && fault is (DecisionFault.OtherRows or DecisionFault.TooLong)
                ? (
                    PartOutcome.NotChecked,
                    "the decision is on rows of the rules under which it was signed; under those of this version the rows come out otherwise, so it could not be compared: have it reviewed"
                )
            : FaultOf(fault, statement) is { } words ? (PartOutcome.Fails, words)
            : null;
    }

    private static string? FaultOf(DecisionFault fault, SignedStatement statement) =>
        fault switch
        {
            DecisionFault.None => null,
            DecisionFault.Missing =>
                "decides on the conclusion, and the signature states no decision",
            DecisionFault.NotTheirs =>
                $"does not decide on the conclusion, and the signature states a decision ({DecisionWords.Whole(statement.Decision!)})",
            DecisionFault.PlainWithText =>
                $"the signature states a plain approval with a text that such a one does not have: {statement.Decision!.Reason}",
            DecisionFault.WithoutReason =>
                "the signature declines, or approves less than is supported, without saying why",
            DecisionFault.OtherRows =>
                "the rows that the signature decides on are not those that the data in the report conclude",
            DecisionFault.TooLong =>
                "the signature approves a window that is longer than the data in the report support",
            DecisionFault.InterimNotShorter =>
                "the signature states an interim rule that is not shorter than today's, or stands beside an approved window",
            DecisionFault.Contradictory =>
                "what the signature decides on the rows and what it decides as a whole contradict each other",
            DecisionFault.DatesOutOfOrder =>
                "the windows are in force before the decision was signed, or reviewed before they are in force",
        };
}
