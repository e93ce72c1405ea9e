using StabilityStudy.Core.Planning;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The protocol as a document that is read and signed before the first collection: what is asked, by which limits and criteria it is decided, and how it is done.</summary>
public static class ProtocolDocument
{
    private const int DigestShown = 16;

    /// <summary>The document.</summary>
    /// <param name="protocol">The protocol, with those who sign this document and what their signatures mean.</param>
    /// <param name="plan">What the study takes and can show, planned from the same protocol.</param>
    /// <param name="sha256">SHA-256 of protocol.toml, lower-case hexadecimal.</param>
    /// <param name="paper">Paper size.</param>
    public static ReportModel Build(
        StudyProtocol protocol,
        StudyPlan plan,
        string sha256,
        PaperSize paper
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(sha256);
        return new ReportModel(
            $"Study protocol {protocol.Code}, version {protocol.Version}",
            "en-US",
            paper,
            new RunningHeader(
                $"{protocol.Code} · version {protocol.Version}",
                "valid only with the signatures on page 1",
                $"protocol {sha256[..DigestShown]} · protocol.toml is attached to this file"
            ),
            [
                Approved(protocol, plan),
                Conduct(protocol),
                Rules(protocol),
                Chances(plan),
                Cautions(),
            ]
        );
    }

    private static Section Approved(StudyProtocol protocol, StudyPlan plan) =>
        new(
            "What is asked and what is approved",
            StartsOnNewPage: true,
            [
                new Paragraph(Question(protocol), ParagraphStyle.Lead),
                TimePoints(protocol),
                ChanceTable.Of(plan, withWords: true, ChanceTable.Note),
                .. protocol.Limits.IsEmpty
                    ? ImmutableArray<Block>.Empty
                    : [CriteriaTables.Limits(protocol, [])],
                CriteriaTables.Criteria(protocol, []),
            ]
        )
        {
            Foot =
            [
                new Paragraph(
                    "What you decide by signing: the time points, the numbers of specimens, the limits and the criteria of this protocol. They cannot be changed after the first result has been seen. A change before that is an amendment: it states its reason and is signed again.",
                    ParagraphStyle.Body
                ),
                new Paragraph(
                    "For qualified laboratory staff; the medical director decides. Local regulation, the manufacturer's instructions and the accreditor's rules prevail. Where the anticoagulant of a specimen is unknown, the shortest window applies.",
                    ParagraphStyle.Small
                ),
                new SignatureBoxes([
                    .. protocol.Signatories.Select(signatory => new SignatureBox(
                        TradeWords.Capital(signatory.Role),
                        signatory.Meaning,
                        "NOT SIGNED"
                    )),
                ]),
            ],
        };

    private static string Question(StudyProtocol protocol)
    {
        var analytes = string.Join(", ", protocol.Analytes.Select(analyte => analyte.Name));
        var storages = string.Join(", or as ", protocol.Storages.Select(TradeWords.Of));
        return $"How long may a specimen wait as {storages}, before it is tested? {analytes}.";
    }

    private static Table TimePoints(StudyProtocol protocol) =>
        new(
            "Whose specimens, and how long they wait",
            [
                new Column("Analyte", ColumnAlignment.Left, 1.2),
                new Column("Patient group", ColumnAlignment.Left, 2.4),
                new Column("Specimens", ColumnAlignment.Right, 1),
                new Column("Today's rule", ColumnAlignment.Left, 1.2),
                new Column("Tested again after", ColumnAlignment.Left, 2),
                new Column("Manufacturer's limit", ColumnAlignment.Left, 1.6),
            ],
            [
                .. from analyte in protocol.Analytes
                from @group in protocol.Groups
                where analyte.Groups.IsEmpty || analyte.Groups.Contains(@group.Id)
                select new Row([
                    new TableCell(analyte.Id),
                    new TableCell(@group.Name),
                    new TableCell(NumberText.Count(@group.Specimens)),
                    new TableCell(
                        DurationText.FormatWindow(analyte.StandardWindowOf(@group.Id).Time)
                    ),
                    new TableCell(string.Join(", ", protocol.TimePointsOf(analyte, @group.Id))),
                    new TableCell(
                        analyte.ManufacturerLimit is { } limit
                            ? DurationText.FormatWindow(limit.Time)
                            : "not stated"
                    ),
                ]),
            ],
            protocol.Instruments.IsEmpty
                ? "A time is concluded on only when every earlier one of its row is supported."
                : $"Specimens on each of {ScopeWords.List(protocol.Instruments)}. A time is concluded on only when every earlier one of its row is supported."
        );

    private static Section Conduct(StudyProtocol protocol) =>
        new(
            "How the study is to be run",
            StartsOnNewPage: false,
            [
                new DefinitionList([
                    .. ProtocolDefinitions.Of(
                        protocol,
                        $"at least {NumberText.Count(protocol.MinimumDays)} for a criterion on the mean; eight to ten are better."
                    ),
                    .. protocol.Analytes.SelectMany(analyte => LevelMeanings(analyte, protocol)),
                ]),
            ]
        );

    /// <summary>What the wrong side of the decision levels means for a patient, or that the protocol does not state it.</summary>
    private static IEnumerable<Definition> LevelMeanings(Analyte analyte, StudyProtocol protocol)
    {
        if (!analyte.DecisionLevels.IsEmpty)
        {
            string?[] parts =
            [
                LevelMeaningWords.Of(analyte) is { } meanings ? "a result " + meanings : null,
                LevelMeaningWords.Missing(analyte, protocol) is { } missing
                    ? $"what the wrong side means for a patient is not stated: {missing}"
                    : null,
            ];
            yield return new Definition(
                "Levels of " + analyte.Id,
                string.Join("; ", parts.OfType<string>()) + "."
            );
        }
    }

    private static Section Chances(StudyPlan plan) =>
        new(
            "How many specimens, and how the chances were computed",
            StartsOnNewPage: false,
            [
                new Bullets([
                    .. PlanAnswer.Material(plan),
                    .. PlanParagraph.Failures(plan),
                    .. LevelWords.Of(plan),
                    .. PlanReservations.Of(plan),
                    .. PlanSuppositions.Expected(plan),
                    PlanSuppositions.Simulated(plan),
                    .. PlanSuppositions.Supposed(plan),
                    PlanSuppositions.LeftOut,
                ]),
            ]
        );

    private static Section Rules(StudyProtocol protocol) =>
        new(RulesSection.Others, StartsOnNewPage: false, [new Bullets(DoubtRules.Of(protocol))]);

    private static Section Cautions() =>
        new(
            "This document",
            StartsOnNewPage: false,
            [
                new Bullets([
                    "It was made from protocol.toml, which is attached to it. \"stability-study verify\" draws it again from that file and compares every byte.",
                    "Signed by everybody named on page 1 before the first collection, and given to \"stability-study lock\", it is carried by the report and shows that the criteria were approved before the data.",
                    "A window that the study supports is a modified test where it is longer than the manufacturer's limit.",
                    "Blood is handled under standard precautions. Study results never enter a patient's record. Not a medical device.",
                ]),
            ]
        );
}
