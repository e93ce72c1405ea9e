using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using UglyToad.PdfPig;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A report on results that came as messages is verified, says whose clock it was, and holds nothing of the persons in the messages.</summary>
[Trait("lane", "slow")]
public sealed class MessageReportTests
{
    [Fact]
    public void A_report_on_messages_stands_and_names_no_person_of_them()
    {
        var analyzed = ExampleStudy.Analyze(Study());
        var report = EvidenceExample.Report(Study());
        Assert.True(AttachedStudy.TryRead(report, out var attached, out var fault), fault);
        var recomputed = Recomputation.Of(attached);
        Assert.Equal("", string.Join('\n', recomputed.Faults));
        Assert.Equal(PagesOutcome.Same, recomputed.Pages);

        using var pdf = PdfDocument.Open(report.ToArray());
        var pages = string.Concat(pdf.GetPages().Select(page => page.Text));
        string[] outputs =
        [
            StudyPipeline.RenderText(analyzed, 120, full: true),
            StudyPipeline.RenderHtml(analyzed),
            StudyPipeline.Summarize(analyzed, 120),
            Encoding.UTF8.GetString(StudyPipeline.WriteAnalysis(analyzed).Span),
            pages,
            .. attached.Inputs.Files.Values.Select(file => Encoding.UTF8.GetString(file.Span)),
            Encoding.Latin1.GetString(report.Span),
        ];
        foreach (var output in outputs)
        {
            Assert.DoesNotContain(ResultMessages.Mark, output, StringComparison.Ordinal);
            Assert.DoesNotContain(ResultMessages.Beside, output, StringComparison.Ordinal);
        }

        var text = string.Join(
            ' ',
            outputs[0].Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)
        );
        Assert.Contains(
            "tested_at from OBX-19, the time of analysis by the clock of the instrument",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("collected_at from SPM-17.1, else OBR-7", text, StringComparison.Ordinal);
        Assert.Contains("2 messages of the type ADT^A08", text, StringComparison.Ordinal);
    }

    private static StudyBytes Study()
    {
        var messages = new ResultMessages(7).File(
            SentRows.Of(
                ExampleStudy.Text(ShortStudy.Bytes, ExampleStudy.Results),
                ExampleStudy.Text(ShortStudy.Bytes, ExampleStudy.Specimens)
            )
        );
        var other = Encoding.UTF8.GetBytes(
            $"MSH|^~\\&|||||||ADT^A08|1|P|2.5.1\rPID|1||{ResultMessages.Mark}\r"
        );
        var without = new StudyBytes(ShortStudy.Bytes.Files.Remove(ExampleStudy.Results));
        return without
            .With("results.hl7", (byte[])[.. other, .. other, .. messages])
            .WithText(
                StudyBytes.FactsName,
                ExampleStudy
                    .Text(without, StudyBytes.FactsName)
                    .Replace(
                        "results = \"results.csv\"",
                        "results = \"results.hl7\"",
                        StringComparison.Ordinal
                    )
                    + "\n[read.specimens]\ntimes_from_messages = true\n"
                    + SentRows.Read
            );
    }
}
