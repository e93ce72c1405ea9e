using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>Page 1: what was asked, what the data say, what could change it, and who signs.</summary>
internal static class FirstPage
{
    /// <summary>With more sequences page 1 shows their conclusions at one look, and every figure behind them follows on page 2.</summary>
    private const int MostInFull = 2;

    /// <summary>The conclusions of more sequences could push what might change the decision off the page, so that comes first.</summary>
    private const int MostBeforeAttention = 10;

    public const string Title = "Decision";

    public static Section Of(StudyAnalysis analysis, SectionPages pages)
    {
        var attention = AttentionSummary.Of(analysis, pages);
        return new(
            Title,
            StartsOnNewPage: true,
            [
                .. Asked(analysis),
                .. IsLong(analysis) ? [attention] : ImmutableArray<Block>.Empty,
                .. IsInFull(analysis)
                    ? [Conclusions(analysis, withFigures: false), ConclusionTable.Of(analysis)]
                    : AtOneLook(analysis),
                .. FirstPageFigure.Of(analysis) is { } figure
                    ? [new Floating(figure, FirstPageFigure.LeastHeight)]
                    : ImmutableArray<Block>.Empty,
                .. IsLong(analysis) ? ImmutableArray<Block>.Empty : [attention],
            ]
        )
        {
            Foot = [CautionSection.OnFirstPage(), Signatures(analysis, pages)],
        };
    }

    internal static bool IsLong(StudyAnalysis analysis) =>
        analysis.Sequences.Length > MostBeforeAttention;

    /// <summary>Sentences and figures of a study whose page 1 shows its conclusions at one look; null for others.</summary>
    public static Section? InFull(StudyAnalysis analysis) =>
        IsInFull(analysis)
            ? null
            : new Section(
                "The decision in full",
                StartsOnNewPage: false,
                [Conclusions(analysis, withFigures: true), ConclusionTable.Of(analysis)]
            );

    /// <summary>Whether page 1 holds the table of conclusions, with the number left out of each time point.</summary>
    internal static bool IsInFull(StudyAnalysis analysis) =>
        analysis.Sequences.Length <= MostInFull;

    private static ImmutableArray<Block> AtOneLook(StudyAnalysis analysis)
    {
        var reasons = analysis
            .Sequences.Select(sequence => ConclusionSentence.WhyItEnds(analysis, sequence))
            .OfType<string>()
            .ToImmutableArray();
        return reasons.IsEmpty
            ? [DecisionMatrix.Of(analysis)]
            : [DecisionMatrix.Of(analysis), new Bullets(reasons)];
    }

    private static SignatureBoxes Signatures(StudyAnalysis analysis, SectionPages pages)
    {
        var rows = ConcludedWindow.Of(analysis);
        return new([
            .. analysis.Protocol.Signatories.Select(signatory =>
            {
                var box = new SignatureBox(signatory.Role, signatory.Meaning, "NOT SIGNED");
                return analysis.Protocol.Decides(signatory)
                    ? box with
                    {
                        Choices = Decisions(pages),
                        Rows =
                            rows.Length <= SignatureRoom.MostRowsApart
                                ? [.. rows.Select(row => Row(analysis, row))]
                                : [],
                        PrintedLines = SignatureRoom.Lines(rows.Length),
                    }
                    : box;
            }),
        ]);
    }

    /// <summary>"aPTT ufh, supported 6 h".</summary>
    private static string Row(StudyAnalysis analysis, ConcludedWindow row)
    {
        var names = SequenceNames.Of(analysis, row);
        var instrument = row.IsOfOneInstrument ? ", " + string.Join(", ", row.Instruments) : "";
        var supported = row.Supported is { } window
            ? "supported " + DurationText.FormatWindow(window)
            : "none supported";
        return $"{names.Code(analysis)}{instrument}, {supported}:";
    }

    /// <summary>Conditions need more room than the box has.</summary>
    private static ImmutableArray<string> Decisions(SectionPages pages) =>
        [
            "approve",
            "decline",
            pages.PageOf(DecisionSection.Title) is { } page
                ? $"approve shorter or with conditions, written in on page {NumberText.Count(page)}"
                : "approve shorter or with conditions, written in by hand",
        ];

    /// <summary>For the terminal: every sentence and figure, no signatures.</summary>
    public static Section Summary(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: true,
            [
                .. Asked(analysis),
                Conclusions(analysis, withFigures: true),
                ConclusionTable.Of(analysis),
                AttentionSummary.Of(analysis, SectionPages.None),
                CautionSection.OnFirstPage(),
            ]
        );

    /// <summary>One sentence a patient group.</summary>
    public static VerdictBlock Conclusions(StudyAnalysis analysis, bool withFigures) =>
        new([
            .. analysis.Sequences.Select(sequence =>
                ConclusionSentence.Of(analysis, sequence, withFigures)
            ),
        ]);

    private static IEnumerable<Block> Asked(StudyAnalysis analysis)
    {
        var subject = SharedSubject.Of(analysis) is { } shared ? $" {shared}." : "";
        yield return new Paragraph(
            $"{analysis.Facts.Facility} · protocol {analysis.Protocol.Code}, version {analysis.Protocol.Version}.{subject}",
            ParagraphStyle.Small
        );
        yield return new Paragraph(analysis.Facts.Question, ParagraphStyle.Lead);
        if (LookWords.ToCome(analysis) is { } toCome)
        {
            yield return new Paragraph(
                $"INTERIM: collection is not complete ({toCome}). Nothing is concluded from these figures.",
                ParagraphStyle.Lead
            );
        }
    }
}
