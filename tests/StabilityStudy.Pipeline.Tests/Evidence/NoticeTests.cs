using System.Text;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Notices;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Notices about signed reports: made, signed, verified, and what forged ones bring into the register.</summary>
[Trait("lane", "slow")]
public sealed class NoticeTests
{
    private static readonly VerificationOptions s_trusting = EvidenceExample.Trusting with
    {
        Now = NoticeExample.SignedAt.AddDays(1),
    };

    private static readonly RegisterEntry s_report = RegisterReading.Read(
        "report.pdf",
        EvidenceExample.SignedTwice,
        s_trusting
    );

    private static readonly TheoryData<string> s_forged = [.. Forgeries.Select(item => item.Name)];

    public static TheoryData<string> ForgedNames => s_forged;

    private static Notice Withdrawal => NoticeExample.Drawn(NoticeExample.Withdrawal).Notice;

    /// <summary>Withdrawals made with the program's code, words of what is said of each, and whether something is wrong with it or only not known.</summary>
    private static ImmutableArray<(
        string Name,
        string Said,
        PartOutcome Outcome,
        Func<ReadOnlyMemory<byte>> Make
    )> Forgeries =>
        [
            (
                "nobody has signed",
                "Nobody has signed",
                PartOutcome.NotChecked,
                () => NoticeExample.Drawn(NoticeExample.Withdrawal).Pdf
            ),
            (
                "one signed byte changed",
                "Medical Director One",
                PartOutcome.Fails,
                () =>
                {
                    var bytes = NoticeExample.SignedWithdrawal.ToArray();
                    bytes[200] ^= 1;
                    return bytes;
                }
            ),
            (
                "pages with another reason",
                "The pages are not those",
                PartOutcome.Fails,
                () => Forged(Drawn(Withdrawal with { Reason = "nothing grave" }, Toml(Withdrawal)))
            ),
            (
                "pages with another day",
                "The pages are not those",
                PartOutcome.Fails,
                () =>
                    Forged(
                        Drawn(
                            Withdrawal with
                            {
                                From = NoticeExample.From.AddYears(5),
                            },
                            Toml(Withdrawal)
                        )
                    )
            ),
            (
                "pages with another day, by a version that made no notices",
                "which made none",
                PartOutcome.Fails,
                () =>
                    ApprovedProtocol.Forged(
                        Drawn(
                            Withdrawal with
                            {
                                From = NoticeExample.From.AddYears(5),
                            },
                            Toml(Withdrawal)
                        ),
                        0,
                        EvidenceExample.Director,
                        statement => statement with { ToolVersion = "0.5.0" },
                        at: NoticeExample.SignedAt
                    )
            ),
            (
                "pages by a version that is to come",
                "which is later than this one",
                PartOutcome.NotChecked,
                () =>
                    ApprovedProtocol.Forged(
                        Drawn(Withdrawal with { Reason = "nothing grave" }, Toml(Withdrawal)),
                        0,
                        EvidenceExample.Director,
                        statement => statement with { ToolVersion = "99.0.0" },
                        at: NoticeExample.SignedAt
                    )
            ),
            (
                "data with a remark that no page shows",
                "The pages are not those",
                PartOutcome.Fails,
                () =>
                    Forged(
                        Drawn(Withdrawal, (byte[])[.. Toml(Withdrawal).Span, .. "# not meant\n"u8])
                    )
            ),
            (
                "a statement about another notice",
                "meant for another notice",
                PartOutcome.Fails,
                () =>
                    ApprovedProtocol.Forged(
                        NoticeExample.Drawn(NoticeExample.Withdrawal).Pdf,
                        0,
                        EvidenceExample.Director,
                        statement => statement with { InputDigest = new string('0', 64) },
                        at: NoticeExample.SignedAt
                    )
            ),
            (
                "signed by somebody else than it names",
                "is to be signed by Medical Director One",
                PartOutcome.Fails,
                () =>
                    ApprovedProtocol.Forged(
                        NoticeExample.Drawn(NoticeExample.Withdrawal).Pdf,
                        0,
                        EvidenceExample.Author,
                        at: NoticeExample.SignedAt
                    )
            ),
            (
                "signed in the name of another",
                "signed with the certificate of Lab Scientist One",
                PartOutcome.NotChecked,
                () =>
                    Assert
                        .IsType<SigningAttempt.Done>(
                            NoticeExample.Sign(
                                NoticeExample.Drawn(NoticeExample.Withdrawal).Pdf,
                                EvidenceExample.Author,
                                "Medical Director One"
                            )
                        )
                        .Report
            ),
            (
                "a signer whom nobody trusts",
                "Medical Director One",
                PartOutcome.Fails,
                () =>
                    Assert
                        .IsType<SigningAttempt.Done>(
                            NoticeExample.Sign(
                                NoticeExample.Drawn(NoticeExample.Withdrawal).Pdf,
                                Signer.Make("Medical Director One")
                            )
                        )
                        .Report
            ),
        ];

    [Fact]
    public void A_signed_notice_verifies_in_every_part_and_says_what_it_does()
    {
        var found = ReportVerifier.Verify(NoticeExample.SignedWithdrawal, s_trusting);

        Assert.Equal(
            [PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Holds],
            EvidenceExample.Outcomes(found)
        );
        Assert.Equal(DocumentKind.Notice, found.Document);
        Assert.Equal(Withdrawal.Reason, found.Notice?.Reason);
        Assert.Equal("TOTAL-PASSED", found.Indication);
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_same_notice_is_drawn_to_the_same_bytes(PaperSize paper)
    {
        var request = NoticeExample.Review with { Paper = paper };

        Assert.True(
            NoticeExample
                .Drawn(request)
                .Pdf.Span.SequenceEqual(NoticeExample.Drawn(request).Pdf.Span)
        );
        Assert.Equal(
            PartOutcome.Holds,
            ReportVerifier
                .Verify(NoticeExample.Signed(NoticeExample.Drawn(request).Pdf), s_trusting)
                .Outcome
        );
    }

    [Fact]
    public void It_names_the_signed_file_its_windows_and_what_to_look_back_at()
    {
        var about = Assert.Single(Withdrawal.Reports);
        var window = Assert.Single(about.Windows);
        var row = s_report.Report!.Windows[0];

        Assert.Equal(InputDigest.Sha256(EvidenceExample.SignedTwice.Span), about.FileSha256);
        Assert.Equal("Medical Director One", about.DecidedBy);
        Assert.Equal(row.Approved, window.Window);
        Assert.Equal(row.Row.Today, window.Kept);
        Assert.Equal(s_report.Report.From, window.InForceFrom);
        Assert.NotEmpty(window.TimePoints);
        Assert.All(
            window.TimePoints,
            time => Assert.InRange(time, window.Kept, row.Approved!.Value)
        );
    }

    [Fact]
    public void From_its_day_on_the_register_withdraws_the_window_and_not_before()
    {
        var register = With(NoticeExample.SignedWithdrawal);

        Assert.Empty(register.NoticesWithoutEffect());
        Assert.Equal(
            WindowStanding.InForce,
            register.On(NoticeExample.From.AddDays(-1))[0].Standing
        );
        Assert.Single(register.On(NoticeExample.From.AddDays(-1))[0].Coming);
        Assert.Equal(WindowStanding.Withdrawn, register.On(NoticeExample.From)[0].Standing);
        Assert.Equal(BenchVerdict.DoNotTest, Answer(register).Verdict);
    }

    /// <summary>What proves signatures later is appended to the signed report, and the notice is about the report as it was before.</summary>
    [Fact]
    public void A_report_that_was_renewed_since_is_still_the_one_that_is_meant()
    {
        Assert.True(
            SignedPdf
                .LongTerm.PdfRenewal.Renew(
                    EvidenceExample.SignedTwice,
                    EvidenceExample.Trusting,
                    null
                )
                .TryGet(out var renewed, out _)
        );
        var register = WindowRegister.Of([
            RegisterReading.Read("renewed.pdf", renewed, s_trusting),
            RegisterReading.Read("notice.pdf", NoticeExample.SignedWithdrawal, s_trusting),
        ]);

        Assert.Empty(register.NoticesWithoutEffect());
        Assert.Equal(WindowStanding.Withdrawn, register.On(NoticeExample.From)[0].Standing);
    }

    [Theory]
    [MemberData(nameof(ForgedNames))]
    public void A_withdrawal_that_cannot_be_relied_on_brings_its_window_into_doubt(string name)
    {
        var (_, said, outcome, make) = Forgeries.Single(item => item.Name == name);
        var notice = make();

        var found = ReportVerifier.Verify(notice, s_trusting);
        Assert.Equal(outcome, found.Outcome);
        Assert.Contains(
            found.Parts.SelectMany(part => part.Sentences),
            sentence => sentence.Contains(said, StringComparison.Ordinal)
        );

        var register = With(notice);
        Assert.NotEmpty(register.NoticesWithoutEffect());
        Assert.Equal(WindowStanding.InDoubt, register.On(NoticeExample.From)[0].Standing);
        var answer = Answer(register);
        Assert.Equal(
            (BenchVerdict.AskDirector, BenchReason.NoticeInDoubt),
            (answer.Verdict, answer.Reason)
        );
    }

    /// <summary>What it once was, nobody can tell: it may be a report.</summary>
    [Fact]
    public void A_notice_that_cannot_be_read_answers_nothing_at_all()
    {
        var register = With((byte[])[.. NoticeExample.SignedWithdrawal.Span, .. "\n% more\n"u8]);

        Assert.Equal(BenchReason.ReportNotTrusted, Answer(register).Reason);
    }

    [Fact]
    public void A_notice_about_another_file_of_the_report_brings_it_into_doubt()
    {
        var about = Withdrawal.Reports[0] with { FileSha256 = new string('0', 64) };
        var notice = NoticeDocumentFile.Render(Withdrawal with { Reports = [about] }, PaperSize.A4);
        var register = With(NoticeExample.Signed(notice.Pdf));

        var (_, why) = Assert.Single(register.NoticesWithoutEffect());
        Assert.Contains("another file of report", why, StringComparison.Ordinal);
        Assert.Equal(WindowStanding.InDoubt, register.On(NoticeExample.From)[0].Standing);
    }

    [Fact]
    public void A_notice_about_a_report_that_is_not_there_is_named()
    {
        var register = WindowRegister.Of([
            RegisterReading.Read("notice.pdf", NoticeExample.SignedWithdrawal, s_trusting),
        ]);

        var (_, why) = Assert.Single(register.NoticesWithoutEffect());
        Assert.Contains("is not in this folder", why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_review_moves_the_day_of_the_next_one_from_its_signature_on()
    {
        var register = With(NoticeExample.Signed(NoticeExample.Drawn(NoticeExample.Review).Pdf));
        var signed = DateOnly.FromDateTime(NoticeExample.SignedAt.DateTime);

        Assert.Null(register.On(signed.AddDays(-1))[0].Review);
        Assert.Equal(NoticeExample.Review.Review, register.On(signed)[0].Review);
        Assert.Equal(
            WindowStanding.PastReview,
            register.On(NoticeExample.Review.Review!.Value.AddDays(1))[0].Standing
        );
    }

    /// <summary>The protocol's interval gives the day where the decision and the review state none.</summary>
    [Fact]
    public void The_interval_of_the_protocol_gives_the_day_of_the_next_review()
    {
        var protocol = Encoding.UTF8.GetString(ApprovedProtocol.Bytes.Span);
        var files = EvidenceExample.Locked(
            EvidenceExample.Unlocked.With(
                StudyBytes.ProtocolName,
                Encoding.UTF8.GetBytes(
                    protocol.Replace(
                        "minimum_days",
                        "review_after = \"100 d\"\nminimum_days",
                        StringComparison.Ordinal
                    )
                )
            ),
            EvidenceExample.LockedAt,
            EvidenceExample.Author
        );
        var once = EvidenceExample.Signed(
            EvidenceExample.Report(files),
            "author",
            EvidenceExample.Author
        );
        var signed = DateOnly.FromDateTime(EvidenceExample.Now.DateTime);
        var usual = EvidenceExample.Signed(
            once,
            "approver",
            EvidenceExample.Director,
            DecisionRequest.Approval
        );

        Assert.Equal(signed.AddDays(100), ReviewOf(usual));
        Assert.Equal(
            signed.AddDays(110),
            ReviewOf(Decided(DecisionRequest.Approval with { Effective = signed.AddDays(10) }))
        );
        Assert.Equal(
            signed.AddDays(7),
            ReviewOf(Decided(DecisionRequest.Approval with { Review = signed.AddDays(7) }))
        );
        Assert.Null(ReviewOf(Decided(DecisionRequest.Declined("too few runs"))));
        var without = NoticeExample.Review with { Review = null };
        Assert.IsType<NoticeAttempt.Refused>(NoticeExample.Make(without));
        Assert.Equal(
            without.Today.AddDays(100),
            Assert.IsType<NoticeAttempt.Drawn>(NoticeExample.Make(without, usual)).Notice.Review
        );

        DateOnly? ReviewOf(ReadOnlyMemory<byte> report) =>
            RegisterReading.Read("report.pdf", report, s_trusting).Report!.Review;

        ReadOnlyMemory<byte> Decided(DecisionRequest request) =>
            EvidenceExample.Signed(once, "approver", EvidenceExample.Director, request);
    }

    [Fact]
    public void Only_the_person_it_names_signs_a_notice_and_before_the_next_review()
    {
        var review = NoticeExample.Drawn(NoticeExample.Review).Pdf;
        var other = Assert.IsType<SigningAttempt.Refused>(
            NoticeExample.Sign(review, EvidenceExample.Author)
        );
        var late = Assert.IsType<SigningAttempt.Refused>(
            NoticeExample.Sign(
                review,
                Signer.Make("Medical Director One", NoticeExample.SignedAt.AddYears(9)),
                at: NoticeExample.SignedAt.AddYears(3)
            )
        );

        Assert.Contains("names Medical Director One", other.Why, StringComparison.Ordinal);
        Assert.Contains("is not after today", late.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_made_about_a_report_that_puts_nothing_into_force()
    {
        foreach (
            var (report, said) in new[]
            {
                (EvidenceExample.SignedOnce, "Nobody has decided"),
                (EvidenceExample.Unsigned, "Nobody has decided"),
                (NoticeExample.SignedWithdrawal, "This is no report"),
                (
                    EvidenceExample.Signed(
                        EvidenceExample.SignedOnce,
                        "approver",
                        EvidenceExample.Director,
                        DecisionRequest.Declined("too few runs")
                    ),
                    "no window into force"
                ),
                ((ReadOnlyMemory<byte>)Encoding.ASCII.GetBytes("a report"), "does not verify"),
            }
        )
        {
            var refused = Assert.IsType<NoticeAttempt.Refused>(
                NoticeExample.Make(NoticeExample.Withdrawal, report)
            );
            Assert.Contains(said, refused.Why, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(81, 10)]
    [InlineData(10, 601)]
    public void Texts_that_the_notice_has_no_room_for_are_refused(int name, int reason)
    {
        var refused = Assert.IsType<NoticeAttempt.Refused>(
            NoticeExample.Make(
                NoticeExample.Withdrawal with
                {
                    By = new string('n', name),
                    Reason = new string('r', reason),
                }
            )
        );
        Assert.Contains("has room for", refused.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stays_is_longer_than_todays_rule_and_shorter_than_the_window()
    {
        var row = s_report.Report!.Windows[0].Row;
        var name = $"{row.Analyte}/{row.Group}";
        var stays = row.Today + TimeSpan.FromMinutes(30);
        var register = With(NoticeExample.Signed(NoticeExample.Drawn(Of(name, Words(stays))).Pdf));

        var window = register.On(NoticeExample.From)[0];
        Assert.Equal(WindowStanding.InForce, window.Standing);
        Assert.Equal(stays, window.Window.Approved);
        foreach (
            var (one, text) in new[]
            {
                (name, Words(row.Today)),
                (name, Words(s_report.Report.Windows[0].Approved!.Value)),
                (name, "soon"),
                ("aPTT/nobody", "none"),
            }
        )
        {
            Assert.IsType<NoticeAttempt.Refused>(NoticeExample.Make(Of(one, text)));
        }

        static string Words(TimeSpan time) => Core.Protocol.DurationText.FormatWindow(time);

        static NoticeRequest Of(string row, string stays) =>
            NoticeExample.Withdrawal with
            {
                Windows = [new RowText(row, stays)],
            };
    }

    [Fact]
    public void A_study_is_ended_as_it_stood_and_not_after_a_decision()
    {
        var ended = Assert.IsType<NoticeAttempt.Drawn>(
            StudyEnding.Of(
                EvidenceExample.StudyFiles,
                "Medical Director One",
                "moved",
                PaperSize.A4
            )
        );
        var study = ended.Notice.Study!;
        var record = EvidenceExample.StudyFiles.Files[StudyRecord.Name];

        Assert.Equal(
            InputDigest.Sha256(EvidenceExample.StudyFiles.Files["protocol.toml"].Span),
            study.ProtocolSha256
        );
        Assert.Equal(StudyRecord.NewestSha256(record), study.LockLineSha256);
        Assert.True(study is { Planned: > 0, Collected: > 0, Tested: > 0, Looks: 0 });
        Assert.IsType<NoticeAttempt.Refused>(
            StudyEnding.Of(EvidenceExample.Unlocked, "Medical Director One", "moved", PaperSize.A4)
        );
        var decided = StudyRecord.Next(
            record,
            new RecordEntry(
                RecordAction.Sign,
                EvidenceExample.Now,
                "Medical Director One",
                ToolVersion.Named,
                [],
                []
            )
            {
                Decision = "approved",
            }
        );
        Assert.Contains(
            "withdraw",
            Assert
                .IsType<NoticeAttempt.Refused>(
                    StudyEnding.Of(
                        EvidenceExample.StudyFiles.With(
                            StudyRecord.Name,
                            (byte[])[.. record.Span, .. decided.Span]
                        ),
                        "Medical Director One",
                        "moved",
                        PaperSize.A4
                    )
                )
                .Why,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Every_kind_is_read_as_it_was_written()
    {
        foreach (
            var notice in new[]
            {
                Withdrawal,
                Withdrawal with
                {
                    Kind = NoticeKind.EndedByNewDirector,
                    LooksBack = false,
                    Reason = "quotes \" and \\ and µ",
                },
                NoticeExample.Drawn(NoticeExample.Review).Notice,
                NoticeExample
                    .Drawn(NoticeExample.Review with { Kind = NoticeKind.Adopted, Review = null })
                    .Notice,
                new Notice(NoticeKind.StudyEnded, "Medical Director One", "approver", "moved")
                {
                    Study = new EndedStudy(
                        "X-1",
                        "2",
                        new string('a', 64),
                        3,
                        NoticeExample.SignedAt,
                        null,
                        80
                    )
                    {
                        Collected = 3,
                        Looks = 1,
                        LastLook = NoticeExample.From,
                    },
                },
            }
        )
        {
            var written = NoticeToml.Write(notice);
            Assert.True(NoticeToml.Read(written).TryGet(out var read));
            Assert.Equal(
                Encoding.UTF8.GetString(written.Span),
                Encoding.UTF8.GetString(NoticeToml.Write(read).Span)
            );
            Assert.Equal(
                (notice.Kind, notice.Reason, notice.From, notice.Review, notice.LooksBack),
                (read.Kind, read.Reason, read.From, read.Review, read.LooksBack)
            );
            Assert.Equal(notice.Study, read.Study);
        }
    }

    private static WindowRegister With(ReadOnlyMemory<byte> notice) =>
        WindowRegister.Of([s_report, RegisterReading.Read("notice.pdf", notice, s_trusting)]);

    private static BenchAnswer Answer(WindowRegister register)
    {
        var window = s_report.Report!.Windows[0];
        return MayTest.Answer(
            register,
            new BenchQuestion(window.Row.Analyte, NoticeExample.From)
            {
                Group = window.Row.Group,
                Storage = window.Row.Storage,
                Waited = window.Approved,
            }
        );
    }

    private static ReadOnlyMemory<byte> Toml(Notice notice) => NoticeToml.Write(notice);

    private static ReadOnlyMemory<byte> Forged(ReadOnlyMemory<byte> notice) =>
        ApprovedProtocol.Forged(notice, 0, EvidenceExample.Director, at: NoticeExample.SignedAt);

    /// <summary>Pages of one notice around the data of another.</summary>
    private static ReadOnlyMemory<byte> Drawn(Notice shown, ReadOnlyMemory<byte> data)
    {
        ImmutableArray<Core.Protocol.Signatory> signatories =
        [
            new(shown.Role, NoticeWords.Meaning(shown.Kind)),
        ];
        var model = NoticeDocument.Build(
            shown,
            signatories,
            InputDigest.Sha256(data.Span),
            PaperSize.A4
        );
        var drawn = PdfDrawing.Draw(model);
        return StudyPipeline
            .Finish(
                model,
                drawn,
                SignatoryFields.Of(drawn, signatories, _ => true),
                null,
                ToolVersion.Current,
                [
                    new Attachment(
                        NoticeToml.Name,
                        "application/toml",
                        "The data of the notice",
                        AttachmentRelationship.Source,
                        data
                    ),
                ]
            )
            .Pdf;
    }
}
