using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Which bytes the report was made from, by which program, and how to check it.</summary>
internal static class RecordSection
{
    public const string Title = "Files, software and how to check this report";

    public static Section Of(StudyAnalysis analysis, string? resultDigest) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"Made by stability-study {analysis.ToolVersion} from the files below. The same inputs give the same figures, and the same figures the same bytes, on any machine; no clock is printed.",
                    ParagraphStyle.Body
                ),
                .. LastResult(analysis) is { } last
                    ?
                    [
                        new Paragraph(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"The last result among the inputs was measured on {last:yyyy-MM-dd} at {last:HH:mm zzz}."
                            ),
                            ParagraphStyle.Body
                        ),
                    ]
                    : ImmutableArray<Block>.Empty,
                .. RevisionWords.InFull(analysis) is { } revision
                    ? [new Paragraph(revision, ParagraphStyle.Body)]
                    : ImmutableArray<Block>.Empty,
                .. analysis.Facts.TranscriptionChecks.Select(check => new Paragraph(
                    TranscriptionWords(check),
                    ParagraphStyle.Body
                )),
                new MonospaceLines([
                    "input digest " + analysis.Identity.InputDigest,
                    .. analysis.Identity.Inputs.Select(file => $"{file.Sha256}  {file.Name}"),
                    .. resultDigest is null
                        ? Array.Empty<string>()
                        : ["what was computed from them:", $"{resultDigest}  analysis.json"],
                    "as received from the laboratory:",
                    .. analysis.Identity.RawFiles.Select(file => $"{file.Sha256}  {file.Name}"),
                ]),
                new Paragraph(
                    "The input files and analysis.json (every figure, to 11 digits) are attached to this PDF. To check: save the attachments, compare their SHA-256 with the list, put the input files into a folder and run \"stability-study analyze\" on it: digest and conclusions must be the same.",
                    ParagraphStyle.Body
                ),
                new Paragraph(
                    "The foot of every page shows the start of the input digest and of the hash of analysis.json, so that a page signed on paper is tied to both. The input digest, by hand: SHA-256 over UTF-8 lines, sorted by file name in byte order, one for each file of the first list; each line: name, one space, lower-case hash, one line feed, the last line too.",
                    ParagraphStyle.Body
                ),
                .. analysis.Protocol.Analytes.Any(analyte => analyte.Loinc is not null)
                    ? [new Paragraph(LoincNotice, ParagraphStyle.Small)]
                    : ImmutableArray<Block>.Empty,
            ]
        );

    /// <summary>The words that the license of the codes asks for.</summary>
    private const string LoincNotice =
        "This material contains content from LOINC (http://loinc.org). LOINC is copyright © Regenstrief Institute, Inc. and the Logical Observation Identifiers Names and Codes (LOINC) Committee and is available at no cost under the license at http://loinc.org/license. LOINC® is a registered United States trademark of Regenstrief Institute, Inc.";

    private static DateTimeOffset? LastResult(StudyAnalysis analysis) =>
        analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .SelectMany(pair => new[] { pair.Baseline?.TestedAt, pair.Delayed?.TestedAt })
            .Max();

    /// <summary>"20 rows drawn at random (seed 7) were compared with the printout by LS1 on 2026-03-06; none differed".</summary>
    private static string TranscriptionWords(TranscriptionCheck check) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{check.Rows} {(check.Rows == 1 ? "row" : "rows")} drawn at random (seed {check.Seed}) {(check.Rows == 1 ? "was" : "were")} compared with the instrument's printout by {check.By} on {check.On:yyyy-MM-dd}; {(check.Differences == 0 ? "none" : check.Differences)} differed{(check.Outcome is { } outcome ? ": " + outcome : "")}."
        );
}
