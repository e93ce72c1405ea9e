using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>No reader is shown the name of a member of the code.</summary>
public sealed class ProblemWordsTests
{
    public static TheoryData<SignatureProblem> OfSignatures =>
        [.. Enum.GetValues<SignatureProblem>()];

    public static TheoryData<DocumentProblem> OfDocuments => [.. Enum.GetValues<DocumentProblem>()];

    [Theory]
    [MemberData(nameof(OfSignatures))]
    public void A_problem_of_a_signature_has_words(SignatureProblem problem) =>
        Assert.Contains(' ', ProblemWords.Of(problem));

    [Theory]
    [MemberData(nameof(OfDocuments))]
    public void A_problem_of_a_document_has_words(DocumentProblem problem) =>
        Assert.Contains(' ', ProblemWords.Of(problem));
}
