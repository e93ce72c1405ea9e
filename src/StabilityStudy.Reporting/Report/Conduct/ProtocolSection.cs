using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>What the protocol fixed, who approved it and when, what changed since, and what departed from it.</summary>
internal static class ProtocolSection
{
    public const string Title = "Protocol, limits and deviations";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            // Page 1 is read, signed and copied alone.
            StartsOnNewPage: FirstPage.InFull(analysis) is null,
            [
                new Paragraph(LockWords.Of(analysis.Lock), ParagraphStyle.Body),
                new DefinitionList([
                    .. ProtocolDefinitions.InBrief(analysis.Protocol, CollectionDays(analysis)),
                    .. Shares(analysis),
                ]),
                .. analysis.Protocol.Limits.IsEmpty
                    ? ImmutableArray<Block>.Empty
                    : [CriteriaTables.Limits(analysis.Protocol, analysis.Facts.People)],
                .. LowChances(analysis),
                .. Amendments(analysis),
                new Heading("Deviations from the protocol"),
                Deviations(analysis),
            ]
        );

    /// <summary>Who chose each required share, and why, where the protocol states it; those of single specimens stand on page 1.</summary>
    private static IEnumerable<Definition> Shares(StudyAnalysis analysis) =>
        from criterion in analysis.Protocol.Criteria
        let stated = RationaleWords.Stated("this share", criterion.Rationale, analysis.Facts.People)
        where
            criterion is not IndividualCriterion
            && criterion.SharePercentRequired is not null
            && stated.Length > 0
        select new Definition(
            "Share of " + criterion.Id,
            $"at least {NumberText.Plain(criterion.SharePercentRequired!.Value)} % of specimens.{stated}"
        );

    /// <summary>Where the protocol was locked although some of its times would hardly be supported, the reason stands here.</summary>
    private static IEnumerable<Block> LowChances(StudyAnalysis analysis) =>
        from item in analysis.Lock.Locks
        where item.LowChanceAccepted is not null
        select new Paragraph(
            $"Lock {NumberText.Count(item.Number)} was made although some times would hardly be supported, with the reason: {item.LowChanceAccepted}",
            ParagraphStyle.Body
        );

    private static IEnumerable<Block> Amendments(StudyAnalysis analysis)
    {
        var amendments = analysis.Lock.Locks.Where(item => item.Number > 1).ToImmutableArray();
        if (amendments.IsEmpty)
        {
            yield break;
        }

        yield return new Heading("Amendments of the protocol");
        foreach (var amendment in amendments)
        {
            yield return new Paragraph(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Lock {amendment.Number}, {amendment.At:yyyy-MM-dd HH:mm zzz} by {amendment.By}: {amendment.Reason} {AmendmentWords.Headline(amendment)}"
                ),
                ParagraphStyle.Body
            );
            if (AmendmentWords.Lines(amendment).ToImmutableArray() is { IsEmpty: false } lines)
            {
                yield return new Bullets(lines);
            }
        }
    }

    /// <summary>"10, from 2026-03-02 to 2026-03-13; a mean needs at least 5."</summary>
    public static string CollectionDays(StudyAnalysis analysis)
    {
        var days = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Select(pair => pair.CollectionDay)
            .Distinct()
            .Order()
            .ToImmutableArray();
        return days.IsEmpty
            ? "none."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{days.Length}, from {days[0]:yyyy-MM-dd} to {days[^1]:yyyy-MM-dd}; a mean needs at least {analysis.Protocol.MinimumDays}."
            );
    }

    private static Block Deviations(StudyAnalysis analysis) =>
        analysis.Facts.Deviations.IsEmpty
            ? new Paragraph("None recorded.", ParagraphStyle.Body)
            : new Bullets([
                .. analysis.Facts.Deviations.Select(item =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{item.Text} ({item.By}, {item.On:yyyy-MM-dd})"
                    )
                ),
            ]);
}
