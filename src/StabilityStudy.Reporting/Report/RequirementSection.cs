using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>The clauses that such a study answers and the items that its report should have, each with its page; what is missing is shown as missing.</summary>
internal static class RequirementSection
{
    public const string Title = "Requirements and completeness";

    public static Section Of(StudyAnalysis analysis, SectionPages pages) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Clauses are named from memory and said in our own words, as far as a study of delay answers them: read the texts in force. Whether they apply, and whether the evidence is enough, is for the director and the inspector to say.",
                    ParagraphStyle.Body
                ),
                TableOf(
                    "Clauses that such a study answers",
                    "Clause",
                    Clauses(analysis),
                    pages,
                    CellSections.FirstTitle(analysis),
                    "A document for another reagent than the one used serves by analogy only, and is to be called so where it is named as a source."
                ),
                TableOf(
                    "What a report of a stability study should tell",
                    "Item",
                    Items(analysis),
                    pages,
                    CellSections.FirstTitle(analysis),
                    "Twenty items after the published checklist for reporting stability studies (2020), put together from memory in our own words; the wording of the items was not seen."
                ),
            ]
        );

    internal const string EachTimePoint = "The pages of each time point";

    /// <summary>One line: what is asked, in which section the answer stands, and what of it is missing.</summary>
    private sealed record Asked(string Name, string What, string Section, string? Missing = null);

    private static Table TableOf(
        string caption,
        string name,
        ImmutableArray<Asked> lines,
        SectionPages pages,
        string firstTimePoint,
        string note
    ) =>
        new(
            caption,
            [
                new Column(name, ColumnAlignment.Left, 1.9),
                new Column("Asks for", ColumnAlignment.Left, 3.3),
                new Column("Answered in", ColumnAlignment.Left, 1.9),
                .. pages.HavePages
                    ? [new Column("Page", ColumnAlignment.Right, 0.6)]
                    : ImmutableArray<Column>.Empty,
                new Column("Missing", ColumnAlignment.Left, 3.2),
            ],
            [
                .. lines.Select(line => new Row([
                    new TableCell(line.Name),
                    new TableCell(line.What),
                    new TableCell(line.Section),
                    .. pages.HavePages
                        ? [PageOf(line.Section, pages, firstTimePoint)]
                        : ImmutableArray<TableCell>.Empty,
                    line.Missing is { } missing
                        ? new TableCell(missing, Emphasis.Strong)
                        : new TableCell("nothing"),
                ])),
            ],
            note
        );

    private static TableCell PageOf(string section, SectionPages pages, string firstTimePoint) =>
        new(
            pages.Pages.TryGetValue(
                section == EachTimePoint ? firstTimePoint : section,
                out var page
            )
                ? NumberText.Count(page)
                : "–"
        );

    private static string? LackingDocuments(StudyProtocol protocol)
    {
        string[] limits =
        [
            .. protocol
                .Limits.Select(NamedSource.OfLimit)
                .Where(source => source.IsNoDocument)
                .Select(source => source.Of),
        ];
        return limits.Length == 0 ? null : $"a document for {string.Join(", ", limits)}";
    }

    private static string? Together(params string?[] missing)
    {
        var texts = missing.OfType<string>().ToImmutableArray();
        return texts.IsEmpty ? null : string.Join("; ", texts);
    }

    private static ImmutableArray<Asked> Clauses(StudyAnalysis analysis) =>
        [
            new(
                "42 CFR 493.1253(b)(2)",
                "Performance established by the laboratory when a test is modified",
                EachTimePoint,
                "stability only: accuracy, precision, analytical sensitivity and specificity with interfering substances, reportable range and reference intervals are not in this study"
            ),
            new(
                "42 CFR 493.1253(c)",
                "All activities of that work documented",
                RecordSection.Title,
                "what items 5 to 9 below lack"
            ),
            new(
                "42 CFR 493.1251",
                "A procedure, approved, signed and dated by the director before use, that says how specimens are stored, when rejected",
                DecisionSection.Title,
                "the procedure itself; it is written after the decision"
            ),
            new(
                "42 CFR 493.1242",
                "Rules for labeling, collection, storage, preservation, transport, processing and acceptability; date and time of receipt",
                ConductSection.Title,
                "labeling and transport; what items 7 to 9 below lack"
            ),
            new(
                "42 CFR 493.1105",
                "Records of a method's performance kept as long as the test system is used, at least two years; longer where local rules say so",
                RecordSection.Title,
                "where and how long this file is kept is for the laboratory to write down"
            ),
            new(
                "42 CFR 493.1283",
                "For each result: specimen, receipt and test, condition of unacceptable ones, persons who tested",
                PairSection.Title,
                analysis.Facts.People.IsEmpty
                    ? "no person is named in the files"
                    : "persons and clock times: as far as recorded they stand in the attached specimens.csv and results.csv, not in the table"
            ),
            new(
                "ISO 15189:2022, 7.3.3",
                "Validation of a modified method: specified use, extent, criteria, record, person who authorizes",
                CriteriaSection.Title,
                Together(
                    NotLockedBefore(analysis),
                    "review and authorization, until page 1 is signed"
                )
            ),
            new(
                "ISO 15189:2022, 7.2.7",
                "Time between collection and test specified and watched where it matters",
                DecisionSection.Title,
                "how the laboratory watches the time in daily work"
            ),
            new(
                "ISO 15189:2022, 8.4",
                "Records legible, complete, protected from change, amendments traced",
                RecordSection.Title,
                "protection: hashes show a change and do not prevent it; access and retention are the laboratory's"
            ),
            new(
                "21 CFR 11.10",
                "Electronic records: reliable, complete copies, order of steps, changes told",
                RecordSection.Title,
                "validation of this program in the laboratory; access control; the record of who ran it stays in the study folder"
            ),
            new(
                "21 CFR 11.50",
                "A signature shows printed name, date and time, and meaning",
                FirstPage.Title,
                "signatures: see the boxes there and \"verify\""
            ),
            new(
                "21 CFR 11.70",
                "Signatures tied to their record",
                RecordSection.Title,
                "the signatures, until page 1 is signed"
            ),
        ];

    private static string? NotLockedBefore(StudyAnalysis analysis) =>
        analysis.Lock.Standing == LockStanding.BeforeFirstCollection
            ? null
            : "no proof that the criteria came before the data";

    private static ImmutableArray<Asked> Items(StudyAnalysis analysis)
    {
        var analytes = analysis.Protocol.Analytes;
        return
        [
            new("1 Title", "Names analyte, specimen, storage and time", FirstPage.Title),
            new(
                "2 Background",
                "What is known: today's rule, the manufacturer's limit; published drift stands under Drift with time",
                ConductSection.Title,
                analytes.Any(analyte => analyte.ManufacturerLimit is null)
                    ? "the manufacturer's limit of "
                        + string.Join(
                            ", ",
                            analytes
                                .Where(analyte => analyte.ManufacturerLimit is null)
                                .Select(analyte => analyte.Id)
                        )
                    : null
            ),
            new("3 Question", "What was asked, before data", FirstPage.Title),
            new(
                "4 Analytes",
                "Quantity, unit, method, use in care",
                ConductSection.Title,
                LackingMethod(analytes)
            ),
            new(
                "5 Subjects",
                "Who gave specimens, in which groups; consent or ethics as local rules ask",
                ConductSection.Title,
                "consent or ethics are not in the files"
            ),
            new(
                "6 Number",
                "How many specimens, planned and received, and why so many",
                DispositionSection.Title,
                "why so many: see the protocol's criteria"
            ),
            new(
                "7 Collection",
                "Tube, additive, fill, order of draw, eligibility",
                ConductSection.Title,
                "tube type and additive are not in the files; order of draw, where recorded, stands in specimens.csv"
            ),
            new(
                "8 Processing",
                "Spinning: when, how fast, how long",
                ConductSection.Title,
                "speed and duration of spinning are not in the files"
            ),
            new(
                "9 Storage",
                "State, container, cap, temperature and how it was watched",
                ConductSection.Title,
                "a temperature record: none was seen, the range is the planned one"
            ),
            new(
                "10 Time points",
                "Planned and actual times, and what counts as time zero",
                PairSection.Title
            ),
            new(
                "11 Method",
                "Instruments, reagents, lots",
                ConductSection.Title,
                analysis.Facts.Instruments.IsEmpty || analysis.Facts.Lots.IsEmpty
                    ? "instruments or lots are not named"
                    : null
            ),
            new(
                "12 Imprecision",
                "Imprecision of the method and control of the runs",
                ConductSection.Title,
                analysis.Protocol.Controls == ControlRule.KeptElsewhere
                    ? "control results are kept elsewhere"
                    : LackingCv(analytes)
            ),
            new(
                "13 Runs",
                "Replicates; which results share a run or a day",
                ConductSection.Title,
                "which results share a run stands, where recorded, in the attached results.csv"
            ),
            new(
                "14 Limits",
                "Allowable change with its source, fixed before data",
                CriteriaSection.Title,
                Together(NotLockedBefore(analysis), LackingDocuments(analysis.Protocol))
            ),
            new("15 Statistics", "Methods, outliers, software", MethodsSection.Title),
            new(
                "16 Left out",
                "Each specimen that does not count, with reason and, where a person decided, by whom",
                DispositionSection.Title
            ),
            new(
                "17 Results",
                "Change at each time with its uncertainty, and of single specimens",
                EachTimePoint
            ),
            new(
                "18 Drift",
                "Change as a function of time, and when it reaches the limit",
                DriftSection.Title
            ),
            new(
                "19 Limits of the study",
                "To what the conclusion does not extend",
                CoverageSection.Title
            ),
            new(
                "20 Data",
                "Where the data are, who paid, whose interest",
                RecordSection.Title,
                "funding and interests are not in the files"
            ),
        ];
    }

    private static string? LackingMethod(ImmutableArray<Analyte> analytes) =>
        Lacking(analytes, analyte => analyte.Method is null, "the method of ");

    private static string? LackingCv(ImmutableArray<Analyte> analytes) =>
        Lacking(
            analytes,
            analyte => analyte.BetweenRunCvPercent is null && !analyte.IsQualitative,
            "the between-run CV of "
        );

    private static string? Lacking(
        ImmutableArray<Analyte> analytes,
        Func<Analyte, bool> lacks,
        string what
    )
    {
        var lacking = analytes.Where(lacks).Select(analyte => analyte.Id).ToImmutableArray();
        return lacking.IsEmpty ? null : what + string.Join(", ", lacking);
    }
}
