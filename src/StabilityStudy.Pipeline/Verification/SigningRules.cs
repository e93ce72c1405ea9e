using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Json;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>
/// What the program asks of those who sign, asked again of a signed report: another program, or a changed one, can put
/// right signatures of trusted people where these rules forbid them.
/// </summary>
internal static class SigningRules
{
    /// <summary>What breaks a rule, or cannot be told, about one signature that is right.</summary>
    /// <param name="signature">The signature.</param>
    /// <param name="statement">What it states.</param>
    /// <param name="analysis">The analysis in the report.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OfOne(
        SignatureVerification signature,
        SignedStatement statement,
        StudyAnalysis analysis
    )
    {
        if (statement.InputDigest != analysis.Identity.InputDigest)
        {
            yield return (PartOutcome.Fails, "the signature was meant for another study");
        }

        var protocol = analysis.Protocol;
        var place = SignatoryFields.SignatoryOf(protocol, signature.FieldName);
        if (place is null)
        {
            yield return (PartOutcome.Fails, "no signatory of the protocol signs in this field");
        }
        else if (place.Role != statement.Role)
        {
            yield return (
                PartOutcome.Fails,
                $"signed in the place of the {place.Role}, and says to sign as {statement.Role}"
            );
        }
        else if (DecisionFault(analysis, place, statement, signature) is { } fault)
        {
            yield return (PartOutcome.Fails, fault);
        }

        if (LastResult(analysis) is { } last && signature.ClaimedTime < last)
        {
            yield return (
                PartOutcome.Fails,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"signed before the last result in the report was measured ({last:yyyy-MM-dd HH:mm zzz}), by the clock of the signer"
                )
            );
        }

        if (
            signature.SignerName is { } printed
            && signature.Signer is { } certificate
            && printed != certificate.Name
        )
        {
            yield return (
                PartOutcome.NotChecked,
                $"signed with the certificate of {certificate.Name}; whether that is the same person, nothing in the file shows"
            );
        }
    }

    /// <summary>A version that did not make the report signs only what its signatory accepted as not computed again.</summary>
    /// <param name="statement">What the signature states.</param>
    /// <param name="stated">What the report states of itself; null where it is no report.</param>
    public static IEnumerable<(PartOutcome Outcome, string What)> OfVersions(
        SignedStatement statement,
        StatedAnalysis? stated
    )
    {
        if (stated is null || statement.ToolVersion == stated.ToolVersion)
        {
            yield break;
        }

        yield return statement.AcceptedNotRecomputed.IsEmpty
            ? (
                PartOutcome.Fails,
                $"signed with version {statement.ToolVersion} over a report of version {stated.ToolVersion} without accepting what could not be computed again"
            )
            : (
                PartOutcome.Holds,
                $"signed with version {statement.ToolVersion} over a report of version {stated.ToolVersion}, and accepted as not computed again: {string.Join("; ", statement.AcceptedNotRecomputed)}"
            );
    }

    /// <summary>What breaks a rule, or cannot be told, about one signature beside those before it.</summary>
    public static IEnumerable<(PartOutcome Outcome, string What)> Beside(
        SignatureVerification signature,
        IEnumerable<SignatureVerification> before
    )
    {
        foreach (var earlier in before.Where(item => item.Holds))
        {
            if (signature.Signer?.Sha256 == earlier.Signer?.Sha256)
            {
                yield return (
                    PartOutcome.Fails,
                    $"the same certificate has signed before ({earlier.Reason}), and two people must"
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

    /// <summary>When the last result of the study was measured; null without one.</summary>
    public static DateTimeOffset? LastResult(StudyAnalysis analysis) =>
        analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .SelectMany(pair => new[] { pair.Baseline?.TestedAt, pair.Delayed?.TestedAt })
            .Max();

    private static string? DecisionFault(
        StudyAnalysis analysis,
        Signatory signatory,
        SignedStatement statement,
        SignatureVerification signature
    ) =>
        DecisionFaults.Of(
            analysis,
            signatory,
            statement.Decision,
            statement.Format,
            DateOnly.FromDateTime((signature.ClaimedTime ?? DateTimeOffset.MinValue).DateTime)
        ) switch
        {
            Signing.DecisionFault.None => null,
            Signing.DecisionFault.Missing =>
                "decides on the conclusion, and the signature states no decision",
            Signing.DecisionFault.NotTheirs =>
                $"does not decide on the conclusion, and the signature states a decision ({DecisionWords.Whole(statement.Decision!)})",
            Signing.DecisionFault.PlainWithText =>
                $"the signature states a plain approval with a text that such a one does not have: {statement.Decision!.Reason}",
            Signing.DecisionFault.WithoutReason =>
                "the signature declines, or approves less than is supported, without saying why",
            Signing.DecisionFault.OtherRows =>
                "the rows that the signature decides on are not those that the data in the report conclude",
            Signing.DecisionFault.TooLong =>
                "the signature approves a window that is longer than the data in the report support",
            Signing.DecisionFault.InterimNotShorter =>
                "the signature states an interim rule that is not shorter than today's, or stands beside an approved window",
            Signing.DecisionFault.Contradictory =>
                "what the signature decides on the rows and what it decides as a whole contradict each other",
            Signing.DecisionFault.DatesOutOfOrder =>
                "the windows are in force before the decision was signed, or reviewed before they are in force",
        };
}
