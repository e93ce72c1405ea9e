using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Earlier looks, how far the collection is, and what amendments changed.</summary>
internal static class LookForms
{
    public static readonly ObjectForm<CollectionStanding> CollectionForm = new("collection")
    {
        { "planned", v => v.Planned, Form.Count },
        { "usable", v => v.Usable, Form.Count },
        { "state", v => v.State, Form.Decisive(Form.Word<CollectionState>()) },
    };

    public static readonly ObjectForm<LookedAtCell> LookedAtCellForm = new("lookedAtCell")
    {
        { "analyte", v => v.Key.Analyte, Form.Text },
        { "group", v => v.Key.Group, Form.Text },
        { "storage", v => v.Key.Storage, Form.Text },
        { "timePoint", v => v.Key.TimePoint, Form.TimePoint },
        { "planned", v => v.Planned, Form.Count },
        { "usable", v => v.Usable, Form.Count },
        { "state", v => v.State, Form.Word<CollectionState>() },
        { "counted", v => v.Counted, Form.Count },
        { "conclusion", v => v.Conclusion, Form.Word<Conclusion>() },
    };

    public static readonly ObjectForm<EarlierLook> EarlierLookForm = new("earlierLook")
    {
        { "number", v => v.Number, Form.Count },
        { "at", v => v.At, Form.Time },
        { "action", v => v.Action, Form.Text },
        { "dataSha256", v => v.DataSha256, Form.Text },
        { "cells", v => v.Cells, Form.List(LookedAtCellForm) },
    };

    public static readonly ObjectForm<ProtocolDifference> DifferenceForm = new("protocolDifference")
    {
        { "key", v => v.Key, Form.Text },
        { "before", v => v.Before, Form.Text.OrNull() },
        { "after", v => v.After, Form.Text.OrNull() },
        { "kind", v => v.Kind, Form.Word<DifferenceKind>() },
    };
}
