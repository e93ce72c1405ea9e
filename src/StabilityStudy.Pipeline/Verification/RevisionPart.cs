using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Whether anything was done to a file besides signing, in words.</summary>
internal static class RevisionPart
{
    private static string Added(DocumentVerification found)
    {
        var signatures = FormattableString.Invariant(
            $"{Core.Queries.Counted.Of(found.Signatures.Length, "signature")}, each in its own field"
        );
        var stamps = found.ArchiveTimeStamps.Length;
        var data = found.Revisions.Count(revision => revision.BringsValidationData);
        return stamps + data == 0
            ? signatures
            : FormattableString.Invariant(
                $"{signatures}, and what proves them later: archive time stamps ({stamps}), additions of certificates and of lists of revoked ones ({data})"
            );
    }

    public static VerifiedPart Of(DocumentVerification found)
    {
        const string question = "Was anything done to the file besides signing?";
        if (found.Failure is not null)
        {
            return new VerifiedPart(question, PartOutcome.Fails, ["The file cannot be read."]);
        }

        var isUnsigned = found.Signatures.IsEmpty && found.Revisions.Length <= 1;
        var problems = found
            .Problems.Where(problem =>
                !isUnsigned || problem is not DocumentProblem.LastRevisionNotSigned
            )
            .Select(problem => (PartOutcome.Fails, ProblemWords.Of(problem)));
        var differences = found.Revisions.SelectMany(revision =>
            revision.Differences.Select(difference =>
                (PartOutcome.Fails, ProblemWords.Of(revision.Number, difference))
            )
        );
        ImmutableArray<(PartOutcome, string)> findings = [.. problems, .. differences];
        return findings.IsEmpty
            ? new VerifiedPart(
                question,
                isUnsigned ? PartOutcome.NotChecked : PartOutcome.Holds,
                [
                    isUnsigned
                        ? "Without a signature nothing shows whether the file was changed."
                        : $"No: nothing was added but {Added(found)}. (Whether signed bytes were changed, the signatures show: see the first part.)",
                ]
            )
            : VerifiedPart.Of(question, findings);
    }
}
