using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Page 1: what was asked, what the data say, what could change it, and who signs.</summary>
internal static class FirstPage
{
    /// <summary>With more sequences, the conclusions, remarks and signatures need the room; the figures stand under "Drift with time".</summary>
    private const int MostFigures = 2;

    private const double FigureHeight = 46;
    private const double FigureHeightOnLetter = 36;

    public static Section Of(StudyAnalysis analysis, PaperSize paper)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(Opening(analysis));
        blocks.AddRange(Figures(analysis, paper));
        blocks.Add(AttentionSummary.Of(analysis));
        blocks.Add(
            new SignatureBoxes([
                .. analysis.Protocol.Signatories.Select(signatory => new SignatureBox(
                    signatory.Role,
                    signatory.Meaning,
                    "NOT SIGNED"
                )),
            ])
        );
        return new Section("Decision", StartsOnNewPage: true, blocks.ToImmutable());
    }

    /// <summary>The same without figures and signatures.</summary>
    public static Section Summary(StudyAnalysis analysis) =>
        new(
            "Decision",
            StartsOnNewPage: true,
            [.. Opening(analysis), AttentionSummary.Of(analysis)]
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

    private static IEnumerable<Block> Figures(StudyAnalysis analysis, PaperSize paper)
    {
        var shown = analysis.Sequences;
        if (shown.IsEmpty || shown.Length > MostFigures)
        {
            yield break;
        }

        var height = paper == PaperSize.Letter ? FigureHeightOnLetter : FigureHeight;
        var axis = DriftFigure.ChangeAxis(shown);
        var charts = shown
            .Select(sequence => DriftFigure.Of(analysis, sequence, axis, height))
            .ToImmutableArray();
        yield return charts.Length == 1 ? charts[0] : new ChartRow(charts);
    }
}
