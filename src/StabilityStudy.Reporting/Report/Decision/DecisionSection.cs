using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What the director can decide on this evidence, under what conditions, and when the study is due again.</summary>
internal static class DecisionSection
{
    public const string Title = "The director's decision, and what to repeat";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "The evidence ends here and the decision begins: the medical director approves, approves a shorter window or with conditions, or declines, on page 1. A window may always be shorter than the one supported, never longer.",
                    ParagraphStyle.Body
                ),
                Windows(analysis),
                new Heading("If a window is approved"),
                new Bullets(Conditions(analysis)),
                new Heading("When the evidence no longer holds"),
                new Bullets([
                    "Repeat before use of another reagent, instrument or method, tube type or additive volume, storage temperature, transport or way of spinning: none of these was studied. Common practice.",
                    "Verify with a few specimens at a new lot of reagent; compare the drift found here. Common practice.",
                    "Repeat when controls, proficiency results or complaints give reason to doubt, when a patient group is added, or when the manufacturer changes its instructions.",
                    "Review on the day that the laboratory's document control sets, and at every revision of the procedure; the local rule decides how often.",
                ]),
            ]
        );

    private static Table Windows(StudyAnalysis analysis) =>
        new(
            "What can be decided",
            [
                new Column("Analyte and group", ColumnAlignment.Left, 2.1),
                new Column("Today's window", ColumnAlignment.Left, 1.1),
                new Column("Longest supported", ColumnAlignment.Left, 1.3),
                new Column("What would answer what is open", ColumnAlignment.Left, 3.4),
            ],
            [
                .. analysis.Sequences.SelectMany(sequence =>
                    sequence
                        .Parts.Where(part => part.Window?.Time != sequence.Window?.Time)
                        .Select(part => Line(analysis, sequence, part))
                        .Prepend(Line(analysis, sequence))
                ),
            ],
            null
        );

    private static Row Line(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        return Line(
            names,
            names.Title(analysis),
            sequence.Window is { } window ? DurationText.FormatWindow(window.Time) : null,
            NoWindow.InBrief(sequence, names),
            Next(sequence)
        );
    }

    /// <summary>One instrument whose window is another than that of all.</summary>
    private static Row Line(StudyAnalysis analysis, Sequence sequence, ScopePart part)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var window = ScopeWords.Window(part);
        return Line(
            names,
            $"{names.Title(analysis)}, {ScopeWords.Of(part.Code)} alone",
            part.Window is null ? null : window,
            window,
            part.TimePoints.FirstOrDefault(item => item.Conclusion != Conclusion.Supported)
                is { MoreSpecimens: { } more } open
                ? $"At {open.TimePoint}: {MoreSpecimensWords.InBrief(more)}"
                : ""
        );
    }

    private static Row Line(
        SequenceNames names,
        string title,
        string? window,
        string noWindow,
        string next
    ) =>
        new([
            new TableCell(title),
            new TableCell(DurationText.Format(names.Analyte.StandardWindowOf(names.Group.Id).Time)),
            window is null
                ? new TableCell(noWindow, Emphasis.Strong)
                : new TableCell(window, Emphasis.Strong, VerdictShape.Supported),
            new TableCell(next),
        ]);

    /// <summary>What to do about the time point at which the sequence ends.</summary>
    private static string Next(Sequence sequence)
    {
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        return open switch
        {
            null => "Nothing is open: every time point asked is supported.",
            { Conclusion: Conclusion.NotSupported } =>
                $"Nothing at {open.Key.TimePoint}: the data speak against it. A new study could ask a shorter time.",
            { Conclusion: Conclusion.NotAssessed } =>
                $"At {open.Key.TimePoint}: what kept it from being assessed, put right in a new study of that time point: {string.Join("; ", open.Doubts.Select(ReasonWords.Of))}.",
            { MoreSpecimens: { } more } =>
                $"At {open.Key.TimePoint}: {MoreSpecimensWords.InBrief(more)}",
            _ => $"At {open.Key.TimePoint}: a new study of that time point, or of a shorter one.",
        };
    }

    private static ImmutableArray<string> Conditions(StudyAnalysis analysis)
    {
        var conditions = ImmutableArray.CreateBuilder<string>();
        conditions.AddRange(
            analysis
                .Queries.Where(query => query.Kind == SequenceQueries.ChangeBeforeBaseline)
                .Select(query => $"Weigh first: {AttentionNames.Message(analysis, query)}")
        );
        conditions.Add(
            "Time of collection is on every request; a specimen without it, or past the window, is rejected or reported as the local procedure says."
        );
        if (UnknownGroup.Windows(analysis) is { IsEmpty: false } unknown)
        {
            conditions.Add(
                $"A specimen whose patient group is not known or was not studied: {string.Join("; ", unknown)}."
            );
        }

        if (
            analysis
                .Sequences.SelectMany(sequence => sequence.Windows)
                .Any(window => window.ManufacturerLimit == ManufacturerStanding.Beyond)
        )
        {
            conditions.Add(
                "A window beyond the manufacturer's limit is a modified test: performance must be established, and the procedure says so."
            );
        }

        if (analysis.Protocol.Analytes.Any(analyte => analyte.ManufacturerLimit is null))
        {
            conditions.Add(
                "Where the protocol states no manufacturer's limit, read the instructions for use before a window is put into force."
            );
        }

        conditions.Add(
            "The procedure manual names storage, cap, spinning and rejection as studied here; staff are told of the change and of the day from which it holds."
        );
        return conditions.ToImmutable();
    }
}
