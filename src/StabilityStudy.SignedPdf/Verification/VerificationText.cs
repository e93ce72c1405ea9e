namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Names the first thing that is wrong, for a refusal; a report of all is the caller's to write.</summary>
internal static class VerificationText
{
    public static string FirstFault(DocumentVerification verification)
    {
        if (verification.Failure is { } failure)
        {
            return failure.What;
        }

        if (verification.Problems is [var problem, ..])
        {
            return $"The document fails the check {problem}.";
        }

        foreach (var signature in verification.Signatures)
        {
            if (signature.Problems is [var first, ..])
            {
                return $"The signature in {signature.FieldName} fails the check {first}.";
            }
        }

        foreach (var stamp in verification.ArchiveTimeStamps)
        {
            if (stamp.Problems is [var first, ..])
            {
                return $"The archive time stamp in {stamp.FieldName} fails the check {first}.";
            }
        }

        foreach (var revision in verification.Revisions)
        {
            if (revision.Differences is [var difference, ..])
            {
                return $"Something else than signing was done: {difference.Part} {difference.Change}.";
            }
        }

        return "There is no signature.";
    }
}
