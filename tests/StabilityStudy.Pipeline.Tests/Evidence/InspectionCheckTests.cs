using System.Text;
using StabilityStudy.Core.Inspection;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A folder for an inspection with a report and its withdrawal, and what the check says after somebody has changed it.</summary>
[Trait("lane", "slow")]
public sealed class InspectionCheckTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Report = "report.pdf";
    private const string Withdrawal = "2026/withdrawal.pdf";

    /// <summary>Before the withdrawal has its effect, so that a window is in force.</summary>
    private static readonly DateOnly s_day = NoticeExample.From.AddDays(-1);

    private static readonly VerificationOptions s_then = EvidenceExample.Trusting with
    {
        Now = NoticeExample.SignedAt.AddDays(1),
    };

    private static readonly InspectionTerms s_terms = InspectionPack.Terms(s_day, s_then, 2);

    private static readonly RegisterFiles s_sources = new(
        [new(Report, EvidenceExample.SignedTwice), new(Withdrawal, NoticeExample.SignedWithdrawal)],
        []
    );

    private static readonly Lazy<InspectionPack> s_pack = new(() => Pack(s_terms));

    private static InspectionPack Pack(InspectionTerms terms) =>
        InspectionPack.Of(s_sources, terms, s_then, _ => { });

    private static ImmutableDictionary<string, ReadOnlyMemory<byte>> Intact =>
        s_pack.Value.Files.ToImmutableDictionary(file => file.Name, file => file.Bytes);

    private static string TextOf(string name) => Encoding.UTF8.GetString(Intact[name].Span);

    private static InspectionVerification Check(
        ImmutableDictionary<string, ReadOnlyMemory<byte>> files,
        VerificationOptions? options = null
    ) =>
        InspectionCheck.Of(
            [.. files.Select(file => new InspectionFile(file.Key, file.Value))],
            new RegisterFiles(
                [
                    .. files
                        .Where(file =>
                            file.Key.StartsWith(InspectionFiles.SignedFolder, Comparison)
                        )
                        .Select(file => new InspectionFile(
                            file.Key[InspectionFiles.SignedFolder.Length..],
                            file.Value
                        )),
                ],
                []
            ),
            options ?? s_then with { Now = s_then.Now!.Value.AddDays(1) },
            _ => { }
        );

    private static ImmutableArray<PartOutcome> Outcomes(InspectionVerification found) =>
        [.. found.Parts.Select(part => part.Outcome)];

    /// <summary>The list written anew, as somebody would who hides a change.</summary>
    private static ImmutableDictionary<string, ReadOnlyMemory<byte>> Relisted(
        ImmutableDictionary<string, ReadOnlyMemory<byte>> files
    ) =>
        files.SetItem(
            InspectionFiles.List,
            InspectionFiles.WriteList(
                InspectionFiles.Listed(
                    files
                        .Where(file =>
                            file.Key is not (InspectionFiles.List or InspectionFiles.Index)
                        )
                        .Select(file => new InspectionFile(file.Key, file.Value))
                )
            )
        );

    private static ReadOnlyMemory<byte> Changed(ReadOnlyMemory<byte> bytes)
    {
        var copy = bytes.ToArray();
        copy[copy.Length / 2] ^= 1;
        return copy;
    }

    [Fact]
    public void An_untouched_folder_holds_and_is_made_again_byte_for_byte()
    {
        var found = Check(Intact);

        Assert.Equal(
            [PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Holds],
            Outcomes(found)
        );
        Assert.Equal(InputDigest.Sha256(Intact[InspectionFiles.Index].Span), found.IndexSha256);
        Assert.Equal(
            Intact[InspectionFiles.Index].ToArray(),
            Pack(s_terms).Files.Single(file => file.Name == InspectionFiles.Index).Bytes.ToArray()
        );
    }

    [Fact]
    public void The_signed_files_are_copied_and_each_file_is_listed_in_the_form_of_sha256sum()
    {
        Assert.Equal(
            EvidenceExample.SignedTwice.ToArray(),
            Intact[InspectionFiles.SignedFolder + Report].ToArray()
        );
        var lines = TextOf(InspectionFiles.List).TrimEnd('\n').Split('\n');
        Assert.Equal(Intact.Count - 2, lines.Length);
        Assert.All(
            lines,
            line => Assert.Equal(InputDigest.Sha256(Intact[line[66..]].Span), line[..64])
        );
        Assert.Contains(InspectionFiles.Verification + Withdrawal + ".txt", Intact.Keys);
        Assert.Contains("bench/PT-wb-rt-card.pdf", Intact.Keys);
    }

    [Fact]
    public void Pages_of_sections_are_found_in_the_signed_file()
    {
        var study = ExampleStudy.Analyze(EvidenceExample.StudyFiles);
        var (_, drawn) = PdfDrawing.DrawSettled(known =>
            ReportBuilder.Build(study.Analysis, PaperSize.A4, known, new string('0', 64))
        );
        Assert.True(PdfDocumentReader.Read(EvidenceExample.SignedTwice).TryGet(out var pdf, out _));

        var pages = OutlinePages.Of(pdf);

        Assert.True(drawn.Pages.Pages.Count > 8);
        Assert.Equal(
            drawn.Pages.Pages.OrderBy(section => section.Key, StringComparer.Ordinal),
            pages.OrderBy(section => section.Key, StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("register/report.pdf")]
    [InlineData("register/2026/withdrawal.pdf")]
    [InlineData("bench/PT-wb-rt-rules.csv")]
    [InlineData("verification/report.pdf.txt")]
    [InlineData("register.csv")]
    public void A_changed_byte_is_named(string name)
    {
        var found = Check(Intact.SetItem(name, Changed(Intact[name])));

        Assert.Equal(PartOutcome.Fails, found.Outcome);
        Assert.Contains(
            $"{name} is not the listed file: its SHA-256 is another.",
            found.Parts[0].Sentences
        );
    }

    [Fact]
    public void Files_that_are_missing_or_were_added_are_named()
    {
        var found = Check(
            Intact
                .Remove("bench/PT-wb-rt-card.pdf")
                .Remove(InspectionFiles.Index)
                .Add("bench/new.pdf", Intact["bench/PT-wb-rt-rules.pdf"])
        );

        Assert.Contains("bench/PT-wb-rt-card.pdf is missing.", found.Parts[0].Sentences);
        Assert.Contains("index.pdf is missing.", found.Parts[0].Sentences);
        Assert.Contains(
            "bench/new.pdf is not in the list: it was added.",
            found.Parts[0].Sentences
        );
        Assert.Equal(PartOutcome.Fails, found.Outcome);
    }

    [Fact]
    public void A_list_that_was_written_anew_hides_no_removed_or_added_file()
    {
        var removed = Check(Relisted(Intact.Remove(InspectionFiles.SignedFolder + Withdrawal)));
        var added = Check(
            Relisted(Intact.Add("bench/aPTT-wb-rt-card.pdf", Intact["bench/PT-wb-rt-card.pdf"]))
        );

        Assert.Equal(PartOutcome.Holds, removed.Parts[0].Outcome);
        Assert.Equal(PartOutcome.Fails, removed.Parts[3].Outcome);
        Assert.Equal(PartOutcome.Holds, added.Parts[0].Outcome);
        Assert.Contains(
            "bench/aPTT-wb-rt-card.pdf follows from none of them.",
            added.Parts[3].Sentences
        );
    }

    [Fact]
    public void A_list_that_was_written_anew_hides_no_exchanged_file()
    {
        var (one, other) = (
            InspectionFiles.SignedFolder + Report,
            InspectionFiles.SignedFolder + Withdrawal
        );
        var found = Check(Relisted(Intact.SetItem(one, Intact[other]).SetItem(other, Intact[one])));

        Assert.Equal(PartOutcome.Holds, found.Parts[0].Outcome);
        Assert.Equal(PartOutcome.Fails, found.Parts[3].Outcome);
        Assert.Contains(
            "verification/report.pdf.txt is not what follows from the signed files.",
            found.Parts[3].Sentences
        );
    }

    [Fact]
    public void A_row_of_the_register_that_was_edited_is_named()
    {
        var edited = TextOf(InspectionFiles.Register).Replace("10 h", "14 h", Comparison);
        var found = Check(
            Relisted(
                Intact.SetItem(
                    InspectionFiles.Register,
                    Encoding.UTF8.GetBytes(
                        edited == TextOf(InspectionFiles.Register)
                            ? edited.Replace("12 h", "14 h", Comparison)
                            : edited
                    )
                )
            )
        );

        Assert.Equal(PartOutcome.Holds, found.Parts[0].Outcome);
        Assert.Equal(PartOutcome.Fails, found.Parts[2].Outcome);
        Assert.StartsWith("Stated and not found again: ", found.Parts[2].Sentences[0], Comparison);
        Assert.Contains("14 h", found.Parts[2].Sentences[0], Comparison);
    }

    [Fact]
    public void An_index_of_other_terms_is_found()
    {
        var other = Pack(s_terms with { KeepYears = 1 });
        var index = other.Files.Single(file => file.Name == InspectionFiles.Index).Bytes;

        var found = Check(Intact.SetItem(InspectionFiles.Index, index));

        Assert.Equal(
            [PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Fails],
            Outcomes(found)
        );
        Assert.Equal(
            ["index.pdf is not what follows from the signed files."],
            found.Parts[3].Sentences
        );
        Assert.NotEqual(InputDigest.Sha256(Intact[InspectionFiles.Index].Span), found.IndexSha256);
    }

    [Fact]
    public void A_softened_text_of_a_verification_is_found()
    {
        var name = "verification/report.pdf.txt";
        var found = Check(
            Relisted(
                Intact.SetItem(
                    name,
                    Encoding.UTF8.GetBytes(TextOf(name).Replace("a", "b", Comparison))
                )
            )
        );

        Assert.Equal(PartOutcome.Fails, found.Parts[3].Outcome);
    }

    [Theory]
    [InlineData(InspectionFiles.List)]
    [InlineData(InspectionToml.Name)]
    public void Without_its_list_or_its_terms_a_folder_fails(string name)
    {
        Assert.Equal(PartOutcome.Fails, Check(Intact.Remove(name)).Outcome);
        Assert.Equal(
            PartOutcome.Fails,
            Check(Intact.SetItem(name, Encoding.UTF8.GetBytes("?"))).Outcome
        );
    }

    [Fact]
    public void Whoever_trusts_nobody_or_others_is_told()
    {
        var nobody = Check(Intact, s_then with { Anchors = null });
        var others = Check(
            Intact,
            s_then with
            {
                Anchors = EvidenceExample.Anchors(EvidenceExample.Author.Certificate),
            }
        );

        Assert.Equal(PartOutcome.NotChecked, nobody.Outcome);
        Assert.Contains("Nobody is trusted: add --trust.", nobody.Parts[1].Sentences);
        Assert.Equal(PartOutcome.Fails, others.Parts[2].Outcome);
        Assert.Contains("other certificates", others.Parts[2].Sentences[0], Comparison);
    }

    [Fact]
    public void What_does_not_verify_any_more_is_named()
    {
        var found = Check(Intact, s_then with { Now = EvidenceExample.Now.AddYears(2) });

        Assert.Equal(PartOutcome.Holds, found.Parts[0].Outcome);
        Assert.Equal(PartOutcome.NotChecked, found.Parts[1].Outcome);
        Assert.StartsWith("register/", found.Parts[1].Sentences[0], Comparison);
        Assert.Equal(PartOutcome.Holds, found.Parts[2].Outcome);
        Assert.Equal(PartOutcome.Holds, found.Parts[3].Outcome);
    }

    [Fact]
    public void A_folder_of_another_version_is_not_made_again_and_one_of_an_invented_version_fails()
    {
        InspectionVerification Stating(string version) =>
            Check(
                Relisted(
                    Intact.SetItem(
                        InspectionToml.Name,
                        InspectionToml.Write(s_terms with { ToolVersion = version })
                    )
                )
            );

        Assert.Equal(PartOutcome.NotChecked, Stating("99.0.0").Parts[3].Outcome);
        Assert.Equal(PartOutcome.Fails, Stating("0.0.7").Parts[3].Outcome);
    }
}
