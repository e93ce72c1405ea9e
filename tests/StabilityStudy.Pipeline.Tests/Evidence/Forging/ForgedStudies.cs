using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>Reports with other content, drawn anew and then signed by both as the program signs.</summary>
internal static class ForgedStudies
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string NotFound = "The program cannot have found that";
    private const string InReportOnly = "is in the report only";

    private static readonly DateTimeOffset s_late = EvidenceExample.LockedAt.AddDays(25);

    public static IEnumerable<ForgedFile> All { get; } =
    [
        Json("another figure", "\"counted\": 20", "\"counted\": 19", "in the report"),
        Json(
            "another conclusion",
            "\"conclusion\": \"supported\"",
            "\"conclusion\": \"inconclusive\"",
            "in the report"
        ),
        Json(
            "a key of analysis.json given twice",
            "\"rules\":",
            "\"rules\": 1, \"rules\":",
            "is not an analysis as this program writes it"
        ),
        Json(
            "an unknown key of analysis.json",
            "\"rules\":",
            "\"more\": 1, \"rules\":",
            "analysis.more is in the report only"
        ),
        Json(
            "another change of a pair",
            "\"changePercent\":2.5",
            "\"changePercent\":2.4",
            "pairs[P-001].changePercent is 2.4 in the report"
        ),
        Json(
            "another person of a specimen",
            "\"subject\":\"P-001\"",
            "\"subject\":\"P-901\"",
            "specimens[P-001].subject is \"P-901\" in the report"
        ),
        Json(
            "another time of a tube",
            "\"spunAt\":\"2026-05-04T19:59:00-05:00\"",
            "\"spunAt\":\"2026-05-04T08:59:00-05:00\"",
            "specimens[P-001].tubes[12 h].spunAt"
        ),
        Json(
            "a pair of a specimen that does not exist",
            "{\"specimen\":\"P-001\",\"status\"",
            "{\"specimen\":\"P-901\",\"status\"",
            "pairs[P-901] is in the report only"
        ),
        Json(
            "a specimen that no pair names",
            "\"specimens\": [",
            "\"specimens\": [\n{\"specimen\":\"P-901\",\"subject\":\"P-901\",\"collectedAt\":\"2026-05-04T08:07:00-05:00\",\"tubes\":[]},",
            "specimens[P-901] is in the report only"
        ),
        Json(
            "a specimen taken out",
            "{\"specimen\":\"P-001\",\"subject\":\"P-001\",\"collectedAt\":\"2026-05-04T08:07:00-05:00\",\"tubes\":[{\"tube\":\"12 h\",\"spunAt\":\"2026-05-04T19:59:00-05:00\"},{\"tube\":\"B\"}]},",
            "",
            "specimens[P-001] is missing in the report"
        ),
        Json(
            "a pair that is no outlier",
            "\"status\":\"compared\",",
            "\"status\":\"compared\",\"isOutlier\":true,",
            "isOutlier is in the report only"
        ),
        Json(
            "a figure with more digits than are written",
            "\"changePercent\":0.8547008547",
            "\"changePercent\":0.854700854701",
            "written otherwise"
        ),
        Json("a pair on two lines", ",\"status\":", ",\n\"status\":", "written otherwise"),
        Earlier(
            "another change of a pair in form 2",
            "\"changePercent\": 2.5",
            "\"changePercent\": 2.4",
            "pairs[P-001].changePercent is 2.4 in the report"
        ),
        Earlier(
            "another person of a specimen in form 2",
            "\"subject\": \"P-001\"",
            "\"subject\": \"P-901\"",
            "pairs[P-001].subject is \"P-901\" in the report"
        ),
        Earlier(
            "a pair of a specimen that does not exist in form 2",
            "\"specimen\": \"P-001\"",
            "\"specimen\": \"P-901\"",
            "pairs[P-901] is in the report only"
        ),
        Earlier(
            "a further pair in form 2",
            "\"pairs\": [",
            "\"pairs\": [{\"specimen\": \"P-901\", \"status\": \"not-assigned\"},",
            "pairs[P-901] is in the report only"
        ),
        Earlier(
            "form 3 stated by a version that had form 2",
            "\"format\": 2",
            "\"format\": 3",
            "has format 2"
        ),
        Json("analysis.json spaced otherwise", "\"rules\": ", "\"rules\":  ", "written otherwise"),
        Json(
            "a version that never was",
            Version(ToolVersion.Current),
            Version("0.0.9"),
            "no released version"
        ),
        Attached("another result", "results.csv", "12.3", "12.1", ""),
        Attached("results in another order", "results.csv", "\n", "\r\n", ""),
        Attached("another limit", StudyBytes.ProtocolName, "percent = 8.0", "percent = 9.0", ""),
        Attached(
            "another name in the facts",
            StudyBytes.FactsName,
            "Lab Scientist One",
            "Lab Scientist Won",
            ""
        ),
        new(
            "pages with other words",
            3,
            "The pages are not those",
            () =>
                Signed(
                    ForgedReport.Make(pages: analysis =>
                        analysis with
                        {
                            Facts = analysis.Facts with { Question = "May it wait for two days?" },
                        }
                    )
                )
        ),
        new("a file attached twice", 3, "attached files", AttachedTwice),
        Invented(
            "a query with an invented code",
            "all-is-well",
            new("pairs.csv", 3, null),
            "",
            "of the report is unknown"
        ),
        Invented(
            "a query that only the data raise",
            "outlier-flagged",
            new("pairs.csv", 3, null),
            "",
            InReportOnly
        ),
        Invented("a table with a path", "file-not-read", new("../all is well.csv", null, null), ""),
        Invented(
            "an unread file that is no table",
            "file-not-read",
            new("all is well", null, null),
            ""
        ),
        Invented("an unread file that was read", "file-not-read", new("pairs.csv", null, null), ""),
        Invented(
            "an unused column of a file whose columns are mapped",
            "column-not-used",
            new("pairs.csv", 1, "all is well"),
            "all is well"
        ),
        Invented(
            "an unused column of no file",
            "column-not-used",
            new("more.csv", 1, "all is well"),
            "all is well"
        ),
        Invented(
            "a row given twice that is not there",
            "duplicate-row",
            new("pairs.csv", 9, null),
            "12.3",
            NotFound,
            "all is well",
            "3"
        ),
        Invented(
            "a column read in place of one that does not exist",
            "own-column-left-aside",
            new("pairs.csv", 1, "all is well"),
            "all is well",
            NotFound,
            "result"
        ),
        Invented(
            "a count of rows of which none is listed",
            "duplicate-row",
            new("pairs.csv", null, null),
            "",
            NotFound,
            "400"
        ),
        Invented(
            "a signed report with invented files",
            "signed-with-other-files",
            new(StudyRecord.Name, null, null),
            "",
            NotFound,
            "2026-05-30",
            "all is well"
        ),
        Invented(
            "a signed report of an invented day",
            "signed-with-other-files",
            new(StudyRecord.Name, null, null),
            "",
            NotFound,
            "a good day",
            StudyBytes.FactsName
        ),
        Invented(
            "a revision of another report",
            "revision-not-recorded",
            new(StudyBytes.FactsName, null, null),
            "3f09c2d41b7a5e68"
        ),
        Invented(
            "another lock in the record",
            "lock-not-as-recorded",
            new(LockFile.Name, null, null),
            "all is well"
        ),
        Invented(
            "a broken record at no line",
            "record-chain-broken",
            new(StudyRecord.Name, null, "all is well"),
            ""
        ),
        new(
            "a file of data that the study does not name",
            3,
            "all is well.csv",
            () =>
                Drawn(analysis =>
                    analysis with
                    {
                        Identity = analysis.Identity with
                        {
                            RawFiles = analysis.Identity.RawFiles.Add(
                                new("all is well.csv", new string('0', 64))
                            ),
                        },
                    }
                )
        ),
        new(
            "no file of data named",
            3,
            "does not name pairs.csv",
            () =>
                Drawn(analysis =>
                    analysis with
                    {
                        Identity = analysis.Identity with { RawFiles = [] },
                    }
                )
        ),
        Locked("no lock", "Not locked", () => EvidenceExample.Unlocked),
        Locked(
            "a lock after the first collection",
            "after the first collection",
            () => EvidenceExample.Locked(EvidenceExample.Unlocked, s_late, EvidenceExample.Author)
        ),
        Locked(
            "an amendment after the first collection",
            "after the first collection",
            () => Amended(EvidenceExample.LockedAt, s_late)
        ),
        Locked(
            "a first lock after the first collection and an amendment of before",
            "before that of the lock it amends",
            () => OutOfOrder(s_late, EvidenceExample.LockedAt)
        ),
        Locked(
            "a lock of another protocol",
            "Changed since it was locked",
            () =>
                EvidenceExample.StudyFiles.Edited(
                    StudyBytes.ProtocolName,
                    "percent = 8.0",
                    "percent = 8.1"
                )
        ),
        Locked(
            "a lock whose signature is of another time",
            "does not fit it",
            () => EvidenceExample.StudyFiles.Edited(LockFile.Name, "13:20:00", "12:20:00")
        ),
        Locked(
            "a lock that the record contradicts",
            "is not the file that the record",
            () =>
                EvidenceExample.StudyFiles.With(
                    LockFile.Name,
                    EvidenceExample
                        .Locked(EvidenceExample.Unlocked, EvidenceExample.LockedAt)
                        .Files[LockFile.Name]
                )
        ),
        new(
            "a lock taken out of the chain",
            3,
            "does not follow the one before it",
            () => BrokenChain()
        ),
        new(
            "a changed copy of the locked protocol",
            4,
            "is not the protocol whose hash",
            OtherCopy
        ),
    ];

    /// <summary>Signed by both as the program signs, whatever the report holds.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">The version that signs; null for this one.</param>
    public static byte[] Signed(ReadOnlyMemory<byte> report, string? version = null)
    {
        var digest =
            AttachedStudy.TryRead(report, out var study, out _)
            && Recomputation.Of(study).Recomputed is { } analysis
                ? analysis.Identity.InputDigest
                : null;
        SignedStatement By(SignedStatement statement) =>
            statement with
            {
                ToolVersion = version ?? statement.ToolVersion,
            };
        return ForgedRevision.Sign(
            ForgedRevision.Sign(
                report,
                ForgedRevision.ContentOf(
                    0,
                    EvidenceExample.Author,
                    null,
                    By,
                    digest: digest,
                    file: report
                ),
                EvidenceExample.Author
            ),
            ForgedRevision.ContentOf(
                1,
                EvidenceExample.Director,
                ForgedRevision.ApprovalOf(ForgedRevision.Analysis),
                By,
                digest: digest,
                file: report
            ),
            EvidenceExample.Director
        );
    }

    /// <summary>A study locked at one time and, with another limit, at another.</summary>
    public static StudyBytes Amended(DateTimeOffset first, DateTimeOffset second) =>
        EvidenceExample.Locked(
            EvidenceExample
                .Locked(EvidenceExample.Unlocked, first, EvidenceExample.Author)
                .Edited(StudyBytes.ProtocolName, "percent = 8.0", "percent = 8.1"),
            second,
            EvidenceExample.Author,
            "a limit was corrected"
        );

    // The program itself refuses to lock before the last lock.
    private static StudyBytes OutOfOrder(DateTimeOffset first, DateTimeOffset second)
    {
        var once = EvidenceExample.Locked(EvidenceExample.Unlocked, first, EvidenceExample.Author);
        var amended = EvidenceExample.Locked(
            once.Edited(StudyBytes.ProtocolName, "percent = 8.0", "percent = 8.1"),
            first,
            null,
            "a limit was corrected"
        );
        Assert.True(LockFile.Read(amended.Files[LockFile.Name]).TryGet(out var locks));
        return amended.With(
            LockFile.Name,
            LockFile.With(
                new StoredLocks(locks.All[..1]),
                locks.All[1] with
                {
                    Lock = locks.All[1].Lock with { At = second },
                }
            )
        );
    }

    private static byte[] BrokenChain()
    {
        var amended = Amended(EvidenceExample.LockedAt, EvidenceExample.LockedAt.AddMinutes(9));
        return Signed(
            ForgedReport.Of(
                amended,
                (name, text) =>
                    name == LockFile.Name ? Replaced(text, "by = \"LS1\"", "by = \"MD1\"") : text
            )
        );
    }

    private static byte[] OtherCopy() =>
        Signed(
            ForgedReport.Of(
                Amended(EvidenceExample.LockedAt, EvidenceExample.LockedAt.AddMinutes(9)),
                (name, text) =>
                    name == LockedProtocols.StoredName(1)
                        ? Replaced(text, "percent = 8.0", "percent = 8.1")
                        : text
            )
        );

    // The program's own writer refuses two files of one name.
    private static byte[] AttachedTwice()
    {
        const string other = "analysis.jsom";
        var document = ForgedRevision.Read(
            ForgedReport.With(files =>
                files.Add(
                    new Attachment(
                        other,
                        "application/json",
                        "Another",
                        AttachmentRelationship.Data,
                        "{}"u8.ToArray()
                    )
                )
            )
        );
        return Signed(
            PdfFileWriter.Write(
                [.. document.Objects.Select(item => item with { Value = Renamed(item.Value) })],
                document.Trailer.Without("Size")
            )
        );

        static PdfObject Renamed(PdfObject value) =>
            value switch
            {
                PdfString text when text.ToText() == other => PdfString.OfText(
                    AnalysisJson.FileName
                ),
                PdfArray array => new PdfArray([.. array.Items.Select(Renamed)]),
                PdfDictionary dictionary => dictionary.Entries.Aggregate(
                    dictionary,
                    (all, entry) => all.With(entry.Name, Renamed(entry.Value))
                ),
                _ => value,
            };
    }

    private static byte[] Drawn(Func<StudyAnalysis, StudyAnalysis> change) =>
        Signed(ForgedReport.Consistent(change));

    private static ForgedFile Invented(
        string name,
        string code,
        QuerySource source,
        string observed,
        string words = NotFound,
        params ImmutableArray<string> values
    ) =>
        new(
            name,
            3,
            words,
            () =>
                Drawn(analysis =>
                {
                    var known = QueryCatalog.All.FirstOrDefault(item => item.Code == code);
                    var kind =
                        known ?? new QueryKind(code, QueryRank.Note, "all is well", "nothing");
                    var bare = new DataQuery(kind, source, observed, "All is well.")
                    {
                        Values = new QueryValues(values),
                    };
                    return analysis with
                    {
                        Queries = analysis.Queries.Insert(
                            ForgedReport.IntakeQueries,
                            kind.Worded?.Invoke(bare) ?? bare
                        ),
                    };
                })
        );

    private static ForgedFile Locked(string name, string words, Func<StudyBytes> files) =>
        new(name, 4, words, () => Signed(EvidenceExample.Report(files())));

    private static ForgedFile Json(string name, string from, string to, string words) =>
        Attached(name, AnalysisJson.FileName, from, to, words);

    private static ForgedFile Attached(
        string name,
        string file,
        string from,
        string to,
        string words
    ) =>
        new(
            name,
            3,
            words,
            () =>
                Signed(
                    ForgedReport.OnePage(
                        (attached, text) => attached == file ? Replaced(text, from, to) : text
                    )
                )
        );

    private static ForgedFile Earlier(string name, string from, string to, string words) =>
        new(
            name,
            3,
            words,
            () =>
                Signed(
                    ForgedReport.Earlier(
                        (attached, text) =>
                            attached == AnalysisJson.FileName ? Replaced(text, from, to) : text
                    ),
                    ForgedReport.EarlierVersion
                )
        );

    private static string Version(string version) => $"\"toolVersion\": \"{version}\"";

    private static string Replaced(string text, string from, string to)
    {
        var at = text.IndexOf(from, Comparison);
        Assert.True(at >= 0, from);
        return text[..at] + to + text[(at + from.Length)..];
    }
}
