using StabilityStudy.SignedPdf.LongTerm;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Compares each revision of a file with the one before.</summary>
internal static class RevisionChain
{
    // Reading a revision reads all before it. More people than that sign no report.
    private const int MostCompared = 16;

    /// <summary>A revision that cannot be read by itself, or was not looked at, may hold anything.</summary>
    private static ImmutableArray<RevisionDifference> Unknown { get; } =
    [new(RevisionChange.Changed, DocumentPart.Unreachable, null, null)];

    public static ImmutableArray<RevisionVerification> Compare(
        PdfDocument document,
        List<SignatureVerification> signatures,
        ImmutableArray<ArchiveTimeStampVerification> archive,
        List<DocumentProblem> problems,
        DecodingBudget budget
    )
    {
        var revisions = ImmutableArray.CreateBuilder<RevisionVerification>();
        PdfDocument? before = null;
        for (var i = 0; i < document.Revisions.Length; i++)
        {
            var after = Read(document, i, budget);
            var differences = (i, before, after) switch
            {
                (0, _, _) => [],
                (_, { } old, { } now) => RevisionComparison.Compare(old, now),
                _ => Unknown,
            };
            if (before is not null && after is not null && !RevisionForm.IsOurs(before, after))
            {
                problems.Add(DocumentProblem.RevisionNotInForm);
            }

            var signed =
                signatures.Find(signature => signature.Revision == i + 1)?.FieldName
                ?? archive.FirstOrDefault(stamp => stamp.Revision == i + 1)?.FieldName;
            revisions.Add(
                new RevisionVerification(
                    i + 1,
                    document.Revisions[i].End,
                    signed,
                    before is not null
                        && after is not null
                        && SigningTraces.StoreOf(before, after) is not null,
                    differences
                )
            );
            before = after;
        }

        return revisions.DrainToImmutable();
    }

    private static PdfDocument? Read(PdfDocument document, int index, DecodingBudget budget)
    {
        if (index == document.Revisions.Length - 1)
        {
            return document;
        }

        var bytes = document.Bytes[..(int)document.Revisions[index].End];
        return
            index < MostCompared
            && PdfDocumentReader.ReadWithin(bytes, budget).TryGet(out var read, out _)
            ? read
            : null;
    }
}
