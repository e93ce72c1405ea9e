using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Json;

/// <summary>A plan as a JSON document of its own, as <c>plan --json</c> writes it.</summary>
public static class PlanDocument
{
    /// <summary>Writes a plan: UTF-8, indented, line feeds.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paragraph">The paragraph for the protocol.</param>
    public static byte[] Write(StudyPlan plan, string paragraph) =>
        AnalysisJson.Write(json =>
            PlanForms.DocumentForm.Write(json, new PlanForms.StatedPlan(plan, paragraph))
        );
}
