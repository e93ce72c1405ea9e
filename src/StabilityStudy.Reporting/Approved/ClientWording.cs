using StabilityStudy.Core.Register;
using static StabilityStudy.Reporting.Approved.ApprovedWords;

namespace StabilityStudy.Reporting.Approved;

/// <summary>What wards and other senders are told.</summary>
/// <param name="rules">The rules.</param>
internal sealed class ClientWording(BenchRules rules)
{
    private const string HeparinWaits =
        "Heparin: send the tube at once. While whole blood waits, heparin is neutralized and the result hides it.";

    /// <summary>The document.</summary>
    public ReportModel Model(PaperSize paper) =>
        new(
            $"{rules.Analyte}: by when a tube must reach us",
            "en-US",
            paper,
            new RunningHeader(
                $"{Invented(rules)}wording for clients · {rules.Analyte}",
                Valid(rules),
                Source(rules)
            ),
            [
                new Section(
                    "For everyone who draws or sends blood",
                    StartsOnNewPage: false,
                    [
                        new Paragraph(
                            $"Write two things on the request: the time of collection, and the anticoagulant that the patient receives. Without them we must use the shortest time below, or cannot test.",
                            ParagraphStyle.Lead
                        ),
                        Times(),
                        new Bullets([
                            $"Keep the tube as {rules.Any.StorageWords}, upright, until it reaches us.",
                            $"We cannot test a tube that is {Unfit(rules)}.",
                            .. rules.Rules.Any(rule =>
                                rule.Within.KnowsGroup
                                && rule.Within.From[0].Window.Anticoagulant == Anticoagulant.Heparin
                            )
                                ? ImmutableArray.Create(HeparinWaits)
                                : [],
                            "If a tube is too old we report that it was not tested and ask for a new one. We do not report a result that may be wrong.",
                        ]),
                        new Paragraph(
                            $"{TradeWords.Capital(Valid(rules))}. {Ends(rules)} Questions: the laboratory. From {Reports(rules)}. {Cautions}",
                            ParagraphStyle.Small
                        ),
                    ]
                ),
            ]
        );

    private Table Times() =>
        new(
            $"Table 1. Times count from {Origin(rules)}.",
            [
                new Column("Patient", ColumnAlignment.Left, 2.4),
                new Column(
                    "At the laboratory, ready to be tested, no later than",
                    ColumnAlignment.Left,
                    2.4
                ),
                new Column("Tested until", ColumnAlignment.Left, 1.4),
            ],
            [
                .. rules.Rules.Select(rule => new Row([
                    new TableCell(Group(rule), Emphasis.Strong),
                    new TableCell(
                        rule.Limit is null ? "ask us before you send it" : Time(Arrives(rule)),
                        Emphasis.Strong
                    ),
                    new TableCell(rule.Limit is null ? "" : Time(rule.AsPlasma ?? rule.Limit)),
                ])),
            ],
            $"The time between the two is ours: {Time(rules.SpinTakes)} to spin and test{(rules.Rules.Any(rule => rule.AsPlasma is not null) ? "; on heparin the tube is spun by the end of its first time" : "")}."
        );

    /// <summary>What is left for the way: the bench needs the rest.</summary>
    private TimeSpan Arrives(BenchRule rule)
    {
        var end = rule.AsPlasma is null ? rule.Limit ?? TimeSpan.Zero : rule.Today;
        return rules.Any.State == StorageState.WholeBlood && end > rules.SpinTakes
            ? end - rules.SpinTakes
            : end;
    }
}
