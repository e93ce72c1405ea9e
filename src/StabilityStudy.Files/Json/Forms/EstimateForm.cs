using System.Collections.Immutable;
using StabilityStudy.Statistics;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The answer of a statistical method: a value, or the code why there is none, with the codes of its remarks.</summary>
internal static class EstimateForm
{
    /// <summary>Estimates of one kind.</summary>
    public static Form<Estimate<T>> Estimate<T>(ObjectForm<T> value)
        where T : class =>
        new ObjectForm<Estimate<T>>(
            "estimateOf" + char.ToUpperInvariant(value.Name[0]) + value.Name[1..]
        )
        {
            { "value", v => v.Value, value.OrNull() },
            { "notComputable", v => v.NotComputable?.Code, Form.Text.OrNull() },
            { "notes", v => [.. v.Notes.Select(note => note.Code)], Form.Open(Form.Text) },
        };
}
