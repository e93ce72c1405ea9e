using System.Collections;
using System.Reflection;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>Collects every text of a model, whatever blocks it has, so that a new kind cannot be forgotten.</summary>
internal static class ModelTexts
{
    /// <summary>Texts that must stand on the pages.</summary>
    public static IEnumerable<string> OnPages(ReportModel model) =>
        Of(model.Sections, ["AlternativeText", "Ticks", .. s_ofShortRows]).Prepend(model.Title);

    /// <summary>Texts that must stand in the plain text, where charts are described, not drawn.</summary>
    public static IEnumerable<string> InPlainText(ReportModel model) =>
        Of(model.Sections, ["X", "Y", "Layers", .. s_ofShortRows])
            .Concat([model.Title, model.Header.Left, model.Header.Right, model.Header.Fingerprint]);

    /// <summary>What a row of Table 1 says where page 1 has no room for it in full, and what only a hand fills in.</summary>
    private static readonly string[] s_ofShortRows =
    [
        nameof(DecisionRow.Brief),
        nameof(DecisionRow.Code),
        nameof(DecisionRow.Hint),
        nameof(DecisionTable.Contradictions),
        nameof(Reservation.InFull),
    ];

    /// <summary>Words of the layout itself: of Table 1, and the numbers of reservations.</summary>
    public static IEnumerable<string> OfLayout { get; } =
    [
        "Printed name",
        "Date and time",
        "Signature",
        "(continued)",
        DecisionTable.Caption,
        DecisionTable.Weigh,
        DecisionTable.Decision,
        DecisionTable.Prompt,
        DecisionTable.DecideNow,
        "Decision: page 1",
        "Table 1 continues on the next page with these rows. Read their figures there, then decide here:",
        .. Enumerable.Range(1, 30).Select(i => i.ToString(CultureInfo.InvariantCulture)),
    ];

    private static IEnumerable<string> Of(object? value, string[] without) =>
        value switch
        {
            null => [],
            string text => [text],
            // Its boxes say in plain text what its alternative text says.
            FlowFigure flow => Of(new object[] { flow.Steps, flow.Branches }, without),
            IEnumerable items => items.Cast<object?>().SelectMany(i => Of(i, without)),
            _ when value.GetType().IsPrimitive || value is Enum => [],
            _ => value
                .GetType()
                .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(p => !without.Contains(p.Name, StringComparer.Ordinal))
                .SelectMany(p => Of(p.GetValue(value), without)),
        };
}
