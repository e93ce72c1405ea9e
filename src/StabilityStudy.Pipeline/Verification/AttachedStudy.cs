using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;

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
        return Verification.FirstRevision.TryRead(report, out var first, out fault)
            && TryRead(first, out study, out fault);
    }

    /// <summary>The same from its first revision.</summary>
    public static bool TryRead(
        Verification.FirstRevision first,
        [NotNullWhen(true)] out AttachedStudy? study,
        [NotNullWhen(false)] out string? fault
    )
    {
        study = null;
        if (!first.Files.TryGetValue(AnalysisJson.FileName, out var json))
        {
            fault =
                $"The file carries no {AnalysisJson.FileName}: it is not a report of this program.";
            return false;
        }

        if (!StatedAnalysis.TryRead(json, out var stated, out fault))
        {
            return false;
        }

        study = new AttachedStudy(
            first.Bytes,
            StudyBytes.Of(first.Files.Remove(AnalysisJson.FileName)),
            json,
            stated
        );
        fault = null;
        return true;
    }
}
