using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Reporting.Inspection;

/// <summary>The index of an inspection folder: what is in force, by which files, whether they verify, which clauses they answer, and what is to be kept.</summary>
public static class InspectionIndex
{
    internal const string KeepTitle = "What to keep, and until when";
    private const int DigestShown = 16;

    /// <summary>The document.</summary>
    public static ReportModel Build(InspectionContents contents)
    {
        ArgumentNullException.ThrowIfNull(contents);
        var terms = contents.Terms;
        return new ReportModel(
            $"Approved windows as of {NumberText.Day(terms.AsOf)}: index for inspection",
            "en-US",
            terms.IsOnLetter ? PaperSize.Letter : PaperSize.A4,
            new RunningHeader(
                $"{(contents.Reports.Any(item => item.Analysis.Facts.Invented) ? "INVENTED EXAMPLE · " : "")}register as of {NumberText.Day(terms.AsOf)}",
                "holds for the files in its folder alone",
                $"list of files {contents.ListSha256[..DigestShown]} · stability-study {terms.ToolVersion}"
            ),
            [
                InForce(contents),
                NotInForce(contents),
                Signed(contents),
                Bench(contents),
                Clauses(contents),
                Keep(contents),
                Files(contents),
                Check(contents),
            ]
        );
    }

    private static Section InForce(InspectionContents contents)
    {
        var (register, day) = (contents.Register, contents.Terms.AsOf);
        var attention = new RegisterAttention(register, day);
        ImmutableArray<string> notes = [.. attention.Faults, .. attention.DueSoon];
        return new(
            "What is in force",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"{AnswerWords.Count(register.On(day).Count(item => item.Standing == WindowStanding.InForce), "window")} in force on {NumberText.Day(day)}, by {AnswerWords.Count(register.Reports.Length, "signed report")} and {AnswerWords.Count(register.Notices.Length, "notice")}; {(notes.IsEmpty ? "nothing is to be attended to" : AnswerWords.Count(notes.Length, "thing") + " to attend to")}.",
                    ParagraphStyle.Lead
                ),
                .. notes.IsEmpty ? ImmutableArray<Block>.Empty : [new Bullets(notes)],
                new Table(
                    "Table 1. The register: approved windows, else today's rules.",
                    [
                        new Column("Analyte", ColumnAlignment.Left, 1),
                        new Column("Group", ColumnAlignment.Left, 1.9),
                        new Column("Storage", ColumnAlignment.Left, 1),
                        new Column("Window", ColumnAlignment.Right, 0.9),
                        new Column("From", ColumnAlignment.Left, 1.2),
                        new Column("Review by", ColumnAlignment.Left, 1.2),
                        new Column("Report", ColumnAlignment.Left, 1.1),
                        new Column("Scope, conditions, notices", ColumnAlignment.Left, 5),
                    ],
                    [
                        .. new RegisterTable(register, day)
                            .Rows()
                            .Select(row => new Row([
                                .. row
                                    .Cells.Append(string.Join("; ", row.Details))
                                    .Select(text => new TableCell(text)),
                            ])),
                    ],
                    $"{Storages(register)}The same with every window, in force or not, is register.csv. \"Report\" is the end of the report's name."
                ),
            ]
        );
    }

    /// <summary>"wb-rt: whole blood, closed, 18 to 25 °C. ", each storage once.</summary>
    private static string Storages(WindowRegister register) =>
        string.Concat(
            register
                .Reports.SelectMany(report => report.Windows)
                .Select(window => $"{window.Row.Storage}: {window.StorageWords}. ")
                .Distinct()
                .Order(StringComparer.Ordinal)
        );

    private static Section NotInForce(InspectionContents contents)
    {
        var day = contents.Terms.AsOf;
        ImmutableArray<string> lines =
        [
            .. contents
                .Register.On(day)
                .Where(item => item.Standing != WindowStanding.InForce)
                .OrderByDescending(item => item.Standing)
                .Select(RegisterWords.Of),
            .. contents.Register.WithoutReport(day).Select(RegisterWords.Of),
        ];
        return new(
            "What is not in force",
            StartsOnNewPage: false,
            [lines.IsEmpty ? new Paragraph("Nothing.", ParagraphStyle.Body) : new Bullets(lines)]
        );
    }

    private static Section Signed(InspectionContents contents) =>
        new(
            "Signed files, verified",
            StartsOnNewPage: false,
            [
                new Table(
                    $"Table 2. What verification found on {NumberText.Minute(contents.Terms.MadeAt)}, question by question.",
                    [
                        new Column("File", ColumnAlignment.Left, 3.4),
                        new Column("What", ColumnAlignment.Left, 3),
                        new Column("1 Signatures", ColumnAlignment.Left, 1.2),
                        new Column("2 Additions", ColumnAlignment.Left, 1.2),
                        new Column("3 Computed again", ColumnAlignment.Left, 1.3),
                        new Column("4 Order", ColumnAlignment.Left, 1.2),
                    ],
                    [.. contents.SignedFiles.Select(Outcomes)],
                    "1 Who signed, and is it trusted? 2 Was anything done besides signing? 3 Do figures or pages follow from the data in the file? 4 Did the criteria come before the data? All that was found is in the folder verification, a text a file."
                ),
                .. contents.SignedFiles.SelectMany(file =>
                    file.Parts.Any(part => !part.Holds)
                        ? (Block[])
                            [
                                new KeepTogether([
                                    new Paragraph(file.Name, ParagraphStyle.Strong),
                                    new Bullets([
                                        .. file
                                            .Parts.Where(part => !part.Holds)
                                            .Select(part =>
                                                $"{part.Question} {TradeWords.Capital(part.Outcome)}. {string.Join(" ", part.Found)}"
                                            ),
                                    ]),
                                ]),
                            ]
                        : []
                ),
            ]
        );

    /// <summary>A notice or protocol document has no data, and so no fourth question.</summary>
    private static Row Outcomes(InspectedFile file) =>
        new([
            new TableCell(file.Name),
            new TableCell(file.What),
            .. Enumerable
                .Range(0, 4)
                .Select(i =>
                    i < file.Parts.Length
                        ? new TableCell(
                            file.Parts[i].Outcome,
                            file.Parts[i].Holds ? Emphasis.None : Emphasis.Strong
                        )
                        : new TableCell("")
                ),
        ]);

    private static Section Bench(InspectionContents contents) =>
        new(
            "Documents of the bench",
            StartsOnNewPage: false,
            [
                contents.Bench.IsEmpty
                    ? new Paragraph("None: no report that counts has a rule.", ParagraphStyle.Body)
                    : new DefinitionList([
                        .. contents.Bench.Select(item => new Definition(
                            item.Subject,
                            item.Obstacle is { } why
                                ? $"None. {why}"
                                : string.Join(", ", item.Files)
                        )),
                    ]),
                new Paragraph(
                    "Drawn from the register as of that day. What hangs at the bench, and which rules the laboratory information system has, is to be compared with them.",
                    ParagraphStyle.Small
                ),
            ]
        );

    private static Section Clauses(InspectionContents contents) =>
        new(
            "Clauses of law and standard",
            StartsOnNewPage: false,
            [
                new Table(
                    "Table 3. Where these files answer, and what they do not.",
                    [
                        new Column("Clause", ColumnAlignment.Left, 1.5),
                        new Column("Requirement", ColumnAlignment.Left, 2.6),
                        new Column("Answered on", ColumnAlignment.Left, 3),
                        new Column("Not by these files", ColumnAlignment.Left, 3.2),
                    ],
                    [
                        .. InspectionClauses
                            .Of(contents)
                            .Select(clause => new Row([
                                new TableCell(clause.Name, Emphasis.Strong),
                                new TableCell(clause.What),
                                new TableCell(clause.Places is "" ? "nowhere" : clause.Places),
                                new TableCell(clause.Open ?? ""),
                            ])),
                    ],
                    "Clauses are named from memory and described in our own words: read the texts in force. Reports are those of which a window is in force, and where none is, all that count; \"the checklist\" is the one in their section \"What the report lacks\". Whether a clause applies, and whether the evidence is enough, is for the director and the inspector to judge."
                ),
            ]
        );

    private static Section Keep(InspectionContents contents)
    {
        var terms = contents.Terms;
        var kept = RecordRetention.Of(contents.Register, terms.AsOf, terms.KeepYears);
        return new(
            KeepTitle,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"Keep each signed file, and the laboratory's own files that it was computed from, as long as the method is in use with a window from it and {AnswerWords.Count(terms.KeepYears, "year")} afterwards (42 CFR 493.1105, from memory; longer where local rules or the accreditor say so). Beside them the study folder with record.jsonl and protocol.lock, the instrument's printouts, and the certificates with their lists of revoked ones. A file with the SHA-256 below is the one that was read.",
                    ParagraphStyle.Body
                ),
                .. kept.SelectMany(item => Kept(item, contents)),
            ]
        );
    }

    private static IEnumerable<Block> Kept(KeptRecords item, InspectionContents contents)
    {
        var raw =
            contents
                .Reports.FirstOrDefault(report => ReferenceEquals(report.Report, item.Report))
                ?.Analysis.Identity.RawFiles
            ?? [];
        yield return new KeepTogether([
            new Paragraph(
                $"{item.Report.Name} ({item.Report.File}): "
                    + (
                        item.LastUse is { } last
                            ? $"last used {NumberText.Day(last)}; keep until {NumberText.Day(item.NotBefore)} at least."
                            : $"in use, or not settled; nothing is thrown away before {NumberText.Day(item.NotBefore)}."
                    ),
                ParagraphStyle.Body
            ),
            new MonospaceLines(
                raw.IsEmpty
                    ? ["the laboratory's own files are not known from this file"]
                    : [.. raw.Select(file => $"{file.Sha256}  {file.Name}")]
            ),
        ]);
    }

    private static Section Files(InspectionContents contents) =>
        new(
            "Files of this folder",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "SHA-256 of every file but this index and the list itself, files.sha256.",
                    ParagraphStyle.Small
                ),
                new MonospaceLines([
                    .. contents.List.Select(file => $"{file.Sha256}  {file.Name}"),
                ]),
            ]
        );

    private static Section Check(InspectionContents contents) =>
        new(
            "How to check this folder",
            StartsOnNewPage: false,
            [
                new Bullets([
                    "\"stability-study verify FOLDER --trust CERTIFICATES\" compares every file with the list, verifies each signed file anew, computes the register anew and compares it, draws index and bench documents again byte for byte, and names files that are missing or were added. Take the certificates by another way than this folder.",
                    "Without this program: \"sha256sum -c files.sha256\" in the folder compares the files with the list; the list itself has the SHA-256 below; the signatures can be seen in a PDF reader.",
                    "Nobody has signed this index. It says what follows from the signed files; what counts is in them.",
                ]),
                new MonospaceLines([
                    $"files.sha256  {contents.ListSha256}",
                    .. Trusted("trusted     ", contents.Terms.Trusted),
                    .. Trusted("for the time", contents.Terms.TrustedForTime),
                ]),
                new Paragraph(
                    "For qualified laboratory staff; the medical director decides. Local regulation, the manufacturer's instructions and the accreditor's rules prevail. A window holds only for what was studied. Study results never enter a patient's record. Not a medical device.",
                    ParagraphStyle.Small
                ),
            ]
        );

    private static IEnumerable<string> Trusted(
        string word,
        ImmutableArray<Core.Inspection.TrustedCertificate> certificates
    ) => certificates.Select(item => $"{word}  {item.Sha256}  {item.Name}");
}
