using System.Text;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>
/// A register of invented studies, each signed and verified: the smallest example with other analytes, lots, groups and results (seeded, by at most 0.1 s). Every study supports 12 h.
/// What was decided when stands beside each; what follows from it is written in tests/ReferenceData/register/two_years.txt, by hand.
/// </summary>
internal static class RegisterOfTwoYears
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Director = "Medical Director One";
    private const string NewDirector = "Medical Director Two";

    /// <summary>When the register is read: after all of it.</summary>
    private static readonly DateTimeOffset s_now = At("2028-06-20");

    private static readonly Lazy<(
        WindowRegister Register,
        ImmutableDictionary<string, ReadOnlyMemory<byte>> Files,
        VerificationOptions Options
    )> s_all = new(Make);

    public static WindowRegister Register => s_all.Value.Register;

    /// <summary>The notice about some of its reports.</summary>
    public static NoticeAttempt Notice(NoticeRequest request, params string[] reports) =>
        NoticeMaking.Of(
            [.. reports.Select(name => new SignedReportFile(name, s_all.Value.Files[name]))],
            request,
            VerificationOptions.WithoutTrust with
            {
                Now = s_now,
            }
        );

    /// <summary>A repeat of one of its reports, begun on a day.</summary>
    public static RepeatStudy? Repeat(
        string report,
        string day,
        RepeatTier tier,
        out string fault
    ) =>
        RepeatStudy.Of(
            report,
            s_all.Value.Files[report],
            s_all.Value.Options,
            Register,
            Day(day),
            tier,
            "a new lot",
            out fault
        );

    private static (
        WindowRegister Register,
        ImmutableDictionary<string, ReadOnlyMemory<byte>> Files,
        VerificationOptions Options
    ) Make()
    {
        var (from, until) = (At("2026-04-01"), At("2030-01-01"));
        var author = Signer.Make("Lab Scientist One", until, from);
        var director = Signer.Make(Director, until, from);
        var newDirector = Signer.Make(NewDirector, until, from);
        var ending = Signer.Make(Director, At("2027-03-01"), from);
        var files = new Dictionary<string, ReadOnlyMemory<byte>>();
        var options = new VerificationOptions(
            EvidenceExample.Anchors(
                author.Certificate,
                director.Certificate,
                newDirector.Certificate,
                ending.Certificate
            ),
            []
        )
        {
            Now = s_now,
        };

        var replaced = Report(
            "A1",
            Study("PTA", 1),
            "2026-06-20",
            Approve("PTA/none", "10 h", "2026-07-01")
        );
        Report(
            "A2",
            With(
                Study("PTA", 2),
                "study.toml",
                "",
                $"\n[revision]\nnumber = 2\nreplaces = \"{replaced[..16]}\"\nreason = \"results corrected\"\n"
            ),
            "2026-11-10",
            Approve(effective: "2026-12-01")
        );
        Report("B1", Study("PTB", 3), "2026-07-15", Approve());
        Report("Q1", Study("PTQ", 4), "2026-07-20", Approve());
        Report("R1", Study("PTR", 5), "2026-07-20", Approve());
        Report(
            "C1",
            Study("PTC", 6),
            "2026-06-25",
            Approve("PTC/none", "9 h") with
            {
                Conditions = ["tubes stay closed"],
            }
        );
        Report(
            "D1",
            Study("PTD", 7),
            "2026-06-30",
            Approve("PTD/none", "10 h") with
            {
                Review = Day("2027-01-31"),
            }
        );
        Report("E1", Study("PTE", 8), "2026-07-01", Approve(), ending);
        Report("F1", Study("PTF", 9), "2026-07-01", Approve());
        files["F1"] = ChangedInSignature(files["F1"]);
        Report("G1", Study("PTG", 10), "2026-06-20", Approve());
        Report("G2", Study("PTG", 11), "2027-01-05", Approve("PTG/none", "10 h", "2027-02-01"));
        Report(
            "H1",
            Study("PTH", 12),
            "2026-06-20",
            Approve("PTH/none", "10 h") with
            {
                Review = Day("2027-06-30"),
            }
        );
        Report("I1", Study("PTI", 13), "2026-06-20", Approve());
        Report("J1", Study("PTJ", 14), "2026-09-01", DecisionRequest.Declined("few days"));
        Report("K1", Study("PTK", 15), "2026-08-01", Approve());
        Report("K2", Study("PTK", 16), "2027-08-02", DecisionRequest.Declined("few days"));
        Report("L1", Study("PTL", 17), "2026-06-20", Approve());
        Report("L2", OfLot(Study("PTL", 18), "PT-2611"), "2027-06-01", Approve("PTL/none", "10 h"));
        Report("N1", Study("PTN", 19), "2026-06-20", Approve());
        Report("P1", Study("PTP", 20), "2026-06-20", Approve());
        Report("P2", OnHeparin(Study("PTP", 21)), "2026-10-01", DecisionRequest.Declined("short"));

        NoticeOn("2027-02-01", Taken(NoticeKind.Withdrawn, "2027-02-10"), "B1", "Q1");
        NoticeOn(
            "2027-02-01",
            Taken(NoticeKind.Withdrawn, "2027-02-10") with
            {
                Windows = [new RowText("PTR/none", "10 h")],
            },
            "R1"
        );
        NoticeOn("2027-03-01", Kept(NoticeKind.Reviewed, "2027-12-31"), "D1");
        NoticeOn(
            "2027-05-03",
            Kept(NoticeKind.Adopted, "2028-03-31") with
            {
                By = NewDirector,
            },
            "H1"
        );
        NoticeOn(
            "2027-03-20",
            Taken(NoticeKind.EndedByNewDirector, "2027-04-01") with
            {
                By = NewDirector,
            },
            "I1"
        );
        files["N1-withdrawn"] = Drawn(
            "2027-09-20",
            Taken(NoticeKind.Withdrawn, "2027-10-01"),
            "N1"
        );
        files["S1-ended"] = Signed(
            Assert
                .IsType<NoticeAttempt.Drawn>(
                    StudyEnding.Of(
                        Locked(
                            With(
                                Study("PTS", 22),
                                "protocol.toml",
                                "code = \"SHEET-PT\"",
                                "code = \"S1\""
                            )
                        ),
                        Director,
                        "the analyzer was replaced",
                        PaperSize.A4
                    )
                )
                .Pdf,
            "approver",
            director,
            "2026-10-05"
        );
        return (
            WindowRegister.Of([
                .. files.Select(file => RegisterReading.Read(file.Key, file.Value, options)),
            ]),
            files.ToImmutableDictionary(),
            options
        );

        StudyBytes Locked(StudyBytes study) =>
            EvidenceExample.Locked(study, At("2026-05-01"), author);

        string Report(
            string name,
            StudyBytes study,
            string day,
            DecisionRequest decision,
            Signer? decides = null
        )
        {
            var locked = Locked(study);
            var once = Signed(EvidenceExample.Report(locked), "author", author, day);
            files[name] = Signed(once, "approver", decides ?? director, day, decision);
            return StudyPipeline.InputDigestOf(locked)!;
        }

        void NoticeOn(string day, NoticeRequest request, params string[] reports) =>
            files[string.Join('-', reports) + "-" + request.Kind] = Signed(
                Drawn(day, request, reports),
                "approver",
                request.By == Director ? director : newDirector,
                day
            );

        ReadOnlyMemory<byte> Drawn(string day, NoticeRequest request, params string[] reports)
        {
            var attempt = NoticeMaking.Of(
                [.. reports.Select(name => new SignedReportFile(name, files[name]))],
                request with
                {
                    Today = Day(day),
                },
                options
            );
            return attempt is NoticeAttempt.Drawn drawn
                ? drawn.Pdf
                : throw new InvalidOperationException(((NoticeAttempt.Refused)attempt).Why);
        }
    }

    private static ReadOnlyMemory<byte> Signed(
        ReadOnlyMemory<byte> document,
        string role,
        Signer signer,
        string day,
        DecisionRequest? decision = null
    )
    {
        var attempt = EvidenceExample.Sign(document, role, signer, decision, At(day));
        return attempt is SigningAttempt.Done done
            ? done.Report
            : throw new InvalidOperationException($"{attempt}");
    }

    private static DecisionRequest Approve(
        string? row = null,
        string? window = null,
        string? effective = null
    ) =>
        new(true, row is null ? null : "few days")
        {
            Windows = row is null ? [] : [new RowText(row, window!)],
            Effective = effective is null ? null : Day(effective),
        };

    public static NoticeRequest Taken(NoticeKind kind, string from) =>
        new(kind, Director, "a shift in external quality control", PaperSize.A4)
        {
            Today = Day(from),
            From = Day(from),
            LooksBack = true,
        };

    private static NoticeRequest Kept(NoticeKind kind, string review) =>
        new(kind, Director, "controls and complaints were looked at", PaperSize.A4)
        {
            Today = Day(review),
            Review = Day(review),
        };

    /// <summary>A digit in the last signature, so that the file can still be read and shows what it is about.</summary>
    private static ReadOnlyMemory<byte> ChangedInSignature(ReadOnlyMemory<byte> pdf)
    {
        var bytes = pdf.ToArray();
        var at = bytes.AsSpan().LastIndexOf("/Contents"u8) + 600;
        bytes[at] = bytes[at] == (byte)'0' ? (byte)'1' : (byte)'0';
        return bytes;
    }

    /// <summary>The example with another analyte and results of its own.</summary>
    private static StudyBytes Study(string analyte, int seed)
    {
        var study = EvidenceExample.Unlocked;
        foreach (
            var (name, was, now) in new[]
            {
                ("protocol.toml", "id = \"PT\"", $"id = \"{analyte}\""),
                ("protocol.toml", "limits = { PT = ", $"limits = {{ {analyte} = "),
                ("study.toml", "analyte = \"PT\"", $"analyte = \"{analyte}\""),
            }
        )
        {
            study = With(study, name, was, now);
        }

        var random = new Random(seed);
        return study.With(
            "pairs.csv",
            Encoding.UTF8.GetBytes(
                string.Join(
                    '\n',
                    Text(study, "pairs.csv")
                        .Split('\n')
                        .Select(
                            (line, i) =>
                                line.Split(',') is { Length: > 6 } cells && i > 0
                                    ? string.Join(
                                        ',',
                                        [.. cells[..6], Moved(cells[6], random), .. cells[7..]]
                                    )
                                    : line
                        )
                )
            )
        );
    }

    private static string Moved(string result, Random random) =>
        decimal.TryParse(result, CultureInfo.InvariantCulture, out var seconds)
            ? (seconds + (random.Next(-1, 2) / 10m)).ToString(CultureInfo.InvariantCulture)
            : result;

    private static StudyBytes OfLot(StudyBytes study, string lot) =>
        With(study, "study.toml", "PT-2604", lot);

    /// <summary>Of patients on heparin, whose rule has two steps: 6 h as whole blood, 10 h as plasma.</summary>
    private static StudyBytes OnHeparin(StudyBytes study) =>
        new[]
        {
            (
                "{ id = \"none\", name = \"No anticoagulant\"",
                "{ id = \"ufh\", name = \"Unfractionated heparin\", anticoagulant = \"heparin\""
            ),
            ("{ time = \"8 h\", source", "{ time = \"6 h\", as_plasma = \"10 h\", source"),
            (
                "kind = \"bias\"",
                "kind = \"bias\"\nwithout_levels = \"the invented range is narrow\""
            ),
        }.Aggregate(study, (so, change) => With(so, "protocol.toml", change.Item1, change.Item2));

    private static StudyBytes With(StudyBytes study, string name, string was, string now)
    {
        var text = Text(study, name);
        Assert.Contains(was, text, Comparison);
        return study.With(
            name,
            Encoding.UTF8.GetBytes(
                was.Length == 0 ? text + now : text.Replace(was, now, Comparison)
            )
        );
    }

    private static string Text(StudyBytes study, string name) =>
        Encoding.UTF8.GetString(study.Files[name].Span);

    private static DateOnly Day(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateTimeOffset At(string day) =>
        new(Day(day), new TimeOnly(10, 30), TimeSpan.FromHours(-5));
}
