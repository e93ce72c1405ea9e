using StabilityStudy.Core.Drift;
using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Files.Json.Forms.DriftStatisticsForms;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The drift of a sequence of time points.</summary>
internal static class DriftForms
{
    public static readonly ObjectForm<MixedDrift> MixedDriftForm = new("mixedDrift")
    {
        { "shape", v => v.Shape, Form.Word<DriftShape>() },
        { "isDeclared", v => v.IsDeclared, Form.Truth },
        { "fit", v => v.Fit, Estimate(RandomSlopeFitForm) },
        { "crossing", v => v.Crossing, CrossingRootsForm.OrNull() },
    };

    public static readonly ObjectForm<DriftResult> DriftResultForm = new("driftResult")
    {
        { "estimate", v => v.Estimate, Estimate(DriftEstimateForm) },
        { "limitPercent", v => v.LimitPercent, Form.Number.OrNull() },
        { "crossing", v => v.Crossing, CrossingTimeForm.OrNull() },
        { "curve", v => v.Curve, Form.List(DriftPointForm) },
        { "misfits", v => v.Misfits, Form.List(Form.TimePoint) },
        { "mixed", v => v.Mixed, Form.Open(MixedDriftForm, "shape") },
    };
}
