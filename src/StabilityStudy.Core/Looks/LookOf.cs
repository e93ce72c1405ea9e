using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Core.Looks;

/// <summary>What an analysis shows, as the record of the study keeps it.</summary>
public static class LookOf
{
    /// <summary>What there is to be seen of each time point; empty when no pair counts anywhere.</summary>
    public static ImmutableArray<LookedAtCell> Analysis(StudyAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return
        [
            .. from item in analysis
                .Sequences.SelectMany(sequence =>
                    sequence.Cells.Select(cell => (Sequence: sequence, Cell: cell))
                )
                .ToImmutableArray()
                .AsParallel()
                .AsOrdered()
            let sequence = item.Sequence
            let cell = item.Cell
            let counted = cell.Pairs.Count(pair => pair.CountsForAgreement)
            where counted > 0
            select new LookedAtCell(
                cell.Key,
                sequence.Collection.Planned,
                sequence.Collection.Usable,
                sequence.Collection.State,
                counted,
                cell.OwnConclusion,
                cell.Pairs.Map(LookedAtPair.Of)
            ),
        ];
    }
}
