using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>What must be found in a document with one revision after two signatures.</summary>
internal static class FurtherRevision
{
    public static DocumentVerification AssertChanged(
        byte[] file,
        DocumentPart part,
        string? entry = null
    )
    {
        var verification = SignedDocument.Verify(file);
        var difference = Assert.Single(verification.Revisions[3].Differences);

        Assert.Equal((RevisionChange.Changed, part), (difference.Change, difference.Part));
        if (entry is not null)
        {
            Assert.Equal(entry, difference.Entry);
        }

        Assert.Contains(DocumentProblem.LastRevisionNotSigned, verification.Problems);
        Assert.False(verification.Holds);
        return verification;
    }
}
