using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Page 1: what was asked, what the data say, what could change it, and who signs.</summary>
internal static class FirstPage
{
    private const int FiguresSideBySide = 3;
    private const double FigureHeight = 44;

    public static Section Of(StudyAnalysis analysis)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(Opening(analysis));
        blocks.AddRange(Figures(analysis));
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
    public static Model.Verdict Conclusions(StudyAnalysis analysis) =>
        new([.. analysis.Sequences.Select(sequence => ConclusionSentence.Of(analysis, sequence))]);

    private static IEnumerable<Block> Opening(StudyAnalysis analysis)
    {
        var invented = analysis.Facts.Invented
            ? " Every specimen, person and result in it is invented."
            : "";
        var subject = SharedSubject.Of(analysis) is { } shared ? $" {shared}." : "";
        yield return new Paragraph(
            $"{analysis.Facts.Facility} · study {analysis.Protocol.Code}, protocol version {analysis.Protocol.Version}.{subject}{invented}",
            ParagraphStyle.Small
        );
        yield return new Paragraph(analysis.Facts.Question, ParagraphStyle.Lead);
        yield return Conclusions(analysis);
        yield return ConclusionTable.Of(analysis);
    }

    private static IEnumerable<Block> Figures(StudyAnalysis analysis)
    {
        var shown = analysis.Sequences.Take(FiguresSideBySide).ToImmutableArray();
        if (shown.IsEmpty)
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
