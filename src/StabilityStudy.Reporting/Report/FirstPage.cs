using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Page 1: what was asked, what the data say, what could change it, and who signs.</summary>
internal static class FirstPage
{
    /// <summary>With more sequences, the conclusions, remarks and signatures need the room; the figures stand under "Drift with time".</summary>
    private const int MostFigures = 2;

    /// <summary>Enough to see a drift against the limit.</summary>
    private const double FigureHeight = 60;

    private static readonly ImmutableArray<string> s_decisions =
    [
        "approve",
        "decline",
        "approve a shorter window or with conditions: __________",
    ];

    public static Section Of(StudyAnalysis analysis)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(Opening(analysis));
        blocks.Add(AttentionSummary.Of(analysis));
        blocks.Add(CautionSection.OnFirstPage());
        blocks.Add(
            new SignatureBoxes([
                .. analysis.Protocol.Signatories.Select(signatory => new SignatureBox(
                    signatory.Role,
                    signatory.Meaning,
                    "NOT SIGNED"
                )
                {
                    Choices = Decides(signatory, analysis.Protocol) ? s_decisions : [],
                }),
            ])
        );
        // Figures come last: they keep their height and follow on page 2 when what decides and who signs fills page 1.
        blocks.AddRange(Figures(analysis));
        return new Section("Decision", StartsOnNewPage: true, blocks.ToImmutable());
    }

    /// <summary>The approver decides; where no role is called so, the last to sign.</summary>
    private static bool Decides(Signatory signatory, StudyProtocol protocol) =>
        protocol.Signatories.Any(IsApprover)
            ? IsApprover(signatory)
            : signatory == protocol.Signatories[^1];

    private static bool IsApprover(Signatory signatory) =>
        signatory.Role.Contains("approver", StringComparison.OrdinalIgnoreCase);

    /// <summary>The same without figures and signatures.</summary>
    public static Section Summary(StudyAnalysis analysis) =>
        new(
            "Decision",
            StartsOnNewPage: true,
            [.. Opening(analysis), AttentionSummary.Of(analysis), CautionSection.OnFirstPage()]
        );

    /// <summary>One sentence a patient group.</summary>
    public static VerdictBlock Conclusions(StudyAnalysis analysis) =>
        new([.. analysis.Sequences.Select(sequence => ConclusionSentence.Of(analysis, sequence))]);

    private static IEnumerable<Block> Opening(StudyAnalysis analysis)
    {
        var subject = SharedSubject.Of(analysis) is { } shared ? $" {shared}." : "";
        yield return new Paragraph(
            $"{analysis.Facts.Facility} · protocol {analysis.Protocol.Code}, version {analysis.Protocol.Version}.{subject}",
            ParagraphStyle.Small
        );
        yield return new Paragraph(analysis.Facts.Question, ParagraphStyle.Lead);
        yield return Conclusions(analysis);
        yield return ConclusionTable.Of(analysis);
    }

    private static IEnumerable<Block> Figures(StudyAnalysis analysis)
    {
        var shown = analysis.Sequences;
        if (shown.IsEmpty || shown.Length > MostFigures)
        {
            yield break;
        }

        var axis = DriftFigure.ChangeAxis(shown);
        var charts = shown
            .Select(sequence => DriftFigure.Of(analysis, sequence, axis, FigureHeight))
            .ToImmutableArray();
        yield return charts.Length == 1 ? charts[0] : new ChartRow(charts);
    }
}
