using StabilityStudy.Statistics;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The answer of a statistical method: a value, or the code why there is none, with the codes of its remarks.</summary>
internal static class EstimateForm
{
    private static readonly ObjectForm<PointEstimate> s_point = new("pointEstimate")
    {
        { "value", v => v.Value, Form.Number },
        { "intercept", v => v.Intercept, Form.Number.OrNull() },
    };

    /// <summary>Estimates of one kind.</summary>
    public static Form<Estimate<T>> Estimate<T>(ObjectForm<T> value)
        where T : class => FormOf(value);

    /// <summary>Estimates by fits that are made again with each pair left out: also the place of the pair without which there is none.</summary>
    public static Form<Estimate<T>> Jackknifed<T>(ObjectForm<T> value)
        where T : class
    {
        var form = FormOf(value);
        form.Add(
            "withoutPair",
            v => v.NotComputable?.Omitted?.Pair,
            Form.Count.OrNull(),
            "where there is no value because one fit fails: the number, from 1, of the pair that this fit leaves out; else null"
        );
        return form;
    }

    /// <summary>Estimates that have a value where only their interval is refused.</summary>
    public static Form<Estimate<T>> WithoutInterval<T>(ObjectForm<T> value)
        where T : class
    {
        var form = FormOf(value);
        form.Add(
            "withoutInterval",
            v => v.NotComputable?.Point,
            s_point.OrNull(),
            "the estimate alone where its interval cannot be computed; else null"
        );
        return form;
    }

    private static ObjectForm<Estimate<T>> FormOf<T>(ObjectForm<T> value)
        where T : class =>
        new("estimateOf" + char.ToUpperInvariant(value.Name[0]) + value.Name[1..])
        {
            { "value", v => v.Value, value.OrNull() },
            { "notComputable", v => v.NotComputable?.Code, Form.Text.OrNull() },
            { "notes", v => [.. v.Notes.Select(AssumptionCode.Of)], Form.Open(Form.Text) },
        };
}
