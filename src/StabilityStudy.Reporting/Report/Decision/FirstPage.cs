using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>Page 1: what was asked, what follows for each question and what speaks against it, and who decides.</summary>
internal static class FirstPage
{
    public const string Title = "Decision";

    public static Section Of(StudyAnalysis analysis, SectionPages pages) =>
        new(
            Title,
            StartsOnNewPage: true,
            [
                .. Asked(analysis),
                DecisionRows.Of(analysis),
                .. Meaning(analysis),
                .. FirstPageFigure.Of(analysis) is { } figure
                    ? [new Floating(figure, FirstPageFigure.LeastHeight)]
                    : ImmutableArray<Block>.Empty,
                CriteriaFirst(analysis, pages),
            ]
        )
        {
            Foot = [Signatures(analysis), CautionSection.OnFirstPage()],
        };

    /// <summary>Every figure behind the rows of a study whose page 1 shows two time points of each; null for others.</summary>
    public static Section? InFull(StudyAnalysis analysis) =>
        analysis.Sequences.Length <= DecisionRows.MostWithAllTimes
            ? null
            : new Section(
                "The decision in full",
                StartsOnNewPage: false,
                [ConclusionTable.Of(analysis)]
            );

    /// <summary>For the terminal: the rows with their evidence, no signatures.</summary>
    public static Section Summary(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: true,
            [
                .. Asked(analysis),
                DecisionRows.Of(analysis),
                .. Meaning(analysis),
                .. InFull(analysis) is null
                    ? ImmutableArray<Block>.Empty
                    : [ConclusionTable.Of(analysis)],
                CriteriaFirst(analysis, SectionPages.None),
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

    /// <summary>Reagent and instrument of the claim where every row has the same instruments; null where rows differ, which then name their own.</summary>
    public static string? SharedReagents(StudyAnalysis analysis)
    {
        var rows = ConcludedWindow.Of(analysis);
        return
            rows.Select(row => string.Join("\n", row.Instruments)).Distinct().Count() == 1
            && rows.All(row => !row.IsOfOneInstrument)
            ? DecisionRows.Reagents(
                rows[0] with
                {
                    Reagents =
                    [
                        .. rows.SelectMany(row => row.Reagents)
                            .Distinct()
                            .Order(StringComparer.Ordinal),
                    ],
                }
            )
            : null;
    }

    private static IEnumerable<Block> Asked(StudyAnalysis analysis)
    {
        yield return new Paragraph(analysis.Facts.Question, ParagraphStyle.Lead);
        string?[] facts =
        [
            analysis.Facts.Facility,
            SharedSubject.Of(analysis) is { } subject
                ? $"{subject} ({analysis.Protocol.Analytes[0].Id})"
                : null,
            SharedReagents(analysis),
            PortionTimes.Shared(analysis),
        ];
        yield return new Paragraph(
            string.Join(" · ", facts.OfType<string>()),
            ParagraphStyle.Small
        );
        if (RevisionWords.InBrief(analysis) is { } revision)
        {
            yield return new Paragraph(revision, ParagraphStyle.Small);
        }

        if (LookWords.ToCome(analysis) is { } toCome)
        {
            yield return new Paragraph(
                $"INTERIM: collection is not complete ({toCome}). Nothing is concluded from these figures.",
                ParagraphStyle.Lead
            );
        }

        if (DecisionRows.Count(analysis) is { } count)
        {
            yield return new Paragraph(count, ParagraphStyle.Strong);
        }

        if (Reservations.WithoutManufacturersLimit(analysis) is { } silent)
        {
            yield return new Paragraph(silent, ParagraphStyle.Small);
        }
    }

    /// <summary>What the limit of a single specimen and the required share mean for patients, and what holds for a specimen of unknown group.</summary>
    private static IEnumerable<Block> Meaning(StudyAnalysis analysis)
    {
        var unknown = UnknownGroup.InBrief(analysis);
        var whom = analysis.Protocol.Groups.Any(group =>
            group.Anticoagulant is not (null or Anticoagulant.None)
        )
            ? "anticoagulant"
            : "patient group";
        var closing = unknown.Length == 0 ? "" : $" If the {whom} is unknown, at most: {unknown}.";
        var within = WithinLimit.Of(analysis);
        if (within.Length + closing.Length > 0)
        {
            yield return within.Length == 0
                ? new KeyMessage("For patients:", closing.TrimStart())
                : new KeyMessage("What \"within limit\" means for patients:", within + closing);
        }
    }

    private static KeyMessage CriteriaFirst(StudyAnalysis analysis, SectionPages pages)
    {
        string?[] sentences =
        [
            LockWords.Of(analysis.Lock),
            analysis.Lock.Approval is null ? "Nobody signed the criteria beforehand." : null,
            LookWords.Of(analysis.Looks),
            .. OpenQueries.Gravest(analysis),
            OpenQueries.InBrief(analysis, pages),
        ];
        return new KeyMessage("Criteria first?", string.Join(" ", sentences.OfType<string>()))
        {
            IsPlain = true,
        };
    }

    private static SignatureBoxes Signatures(StudyAnalysis analysis) =>
        new([
            .. analysis.Protocol.Signatories.Select(signatory =>
            {
                var box = new SignatureBox(
                    TradeWords.Capital(signatory.Role),
                    signatory.Meaning,
                    "NOT SIGNED"
                );
                return analysis.Protocol.Decides(signatory)
                    ? box with
                    {
                        PrintedLines = SignatureRoom.Lines(
                            DecisionRows.IsDecidedInRows(analysis)
                                ? 0
                                : ConcludedWindow.Of(analysis).Length
                        ),
                    }
                    : box;
            }),
        ]);
}
