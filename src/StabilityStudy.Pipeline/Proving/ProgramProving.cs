using StabilityStudy.Pipeline.Proving.Published;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Pipeline.Proving;

/// <summary>Holds the program, as it is installed, to everything whose answer is known.</summary>
public static class ProgramProving
{
    /// <summary>Runs all of it.</summary>
    /// <param name="progress">Told what is being done.</param>
    public static ProgramProof Run(Action<string> progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        progress("Computing published cases");
        var published = PublishedCases.Compute();
        progress("Verifying signed reports of earlier releases");
        var released = ReleasedReports.Verify();
        progress("Drawing a report under several cultures");
        return new ProgramProof([
            new ProofPart(
                "Published data",
                "Data sets and tables that others have published with their answers, computed by the methods that the analysis of a study uses.",
                published
            ),
            new ProofPart(
                "Signed reports of earlier releases",
                "Each is verified as \"stability-study verify\" does it, with every figure computed again from the data inside; then with one byte changed in each of several places, which must be found.",
                released
            ),
            new ProofPart(
                "A report drawn on this computer",
                "The study inside the newest of those reports is analyzed and drawn anew, and every byte of the PDF compared.",
                DrawnReportProof.Draw(published)
            ),
        ]);
    }

    /// <summary>Draws the document.</summary>
    public static ReadOnlyMemory<byte> Pdf(ProgramProof proof, ProofRun run, PaperSize paper)
    {
        var model = ProofDocument.Build(proof, run, paper);
        return DrawnDocument.Finish(PdfDrawing.Draw(model), model.Title).Pdf;
    }
}
