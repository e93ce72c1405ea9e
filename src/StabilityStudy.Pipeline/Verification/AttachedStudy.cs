using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>The study that a report carries in its first revision, which every signature covers.</summary>
/// <param name="FirstRevision">The bytes of the report as it was before anybody signed.</param>
/// <param name="Inputs">Protocol, study facts, locks and canonical data.</param>
/// <param name="AnalysisBytes">analysis.json as it is attached.</param>
/// <param name="Stated">What it states, none of which is believed.</param>
internal sealed record AttachedStudy(
    ReadOnlyMemory<byte> FirstRevision,
    StudyBytes Inputs,
    ReadOnlyMemory<byte> AnalysisBytes,
    StatedAnalysis Stated
)
{
    /// <summary>Takes the study out of a report.</summary>
    /// <param name="report">The bytes of the report.</param>
    /// <param name="study">The study.</param>
    /// <param name="fault">Why there is none, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> report,
        [NotNullWhen(true)] out AttachedStudy? study,
        [NotNullWhen(false)] out string? fault
    )
    {
        study = null;
        if (!PdfDocumentReader.Read(report).TryGet(out var document, out var failure))
        {
            fault = "The file cannot be read as a PDF: " + failure.What;
            return false;
        }

        var first = report[..(int)document.Revisions[0].End];
        if (
            !PdfDocumentReader.Read(first).TryGet(out var original, out failure)
            || !EmbeddedFiles.Extract(original).TryGet(out var attached, out failure)
        )
        {
            fault = "The attached files cannot be read: " + failure.What;
            return false;
        }

        if (attached.Select(file => file.Name).Distinct().Count() != attached.Length)
        {
            fault = "Two attached files have the same name.";
            return false;
        }

        if (attached.FirstOrDefault(file => file.Name == AnalysisJson.FileName) is not { } json)
        {
            fault =
                $"The file carries no {AnalysisJson.FileName}: it is not a report of this program.";
            return false;
        }

        if (!StatedAnalysis.TryRead(json.Bytes, out var stated, out fault))
        {
            return false;
        }

        study = new AttachedStudy(
            first,
            StudyBytes.Of(
                attached
                    .Where(file => file.Name != AnalysisJson.FileName)
                    .Select(file => KeyValuePair.Create(file.Name, file.Bytes))
            ),
            json.Bytes,
            stated
        );
        fault = null;
        return true;
    }
}
