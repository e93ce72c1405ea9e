namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>The way of the specimens of a sequence, from planned to compared, as a figure.</summary>
internal static class DispositionFlow
{
    public static FlowFigure Of(StudyAnalysis analysis, Sequence sequence)
    {
        var title = SequenceNames.Of(analysis, sequence).Title(analysis);
        ImmutableArray<FlowBranch> branches = [.. sequence.Cells.Select(Branch)];
        var planned = sequence.Cells.Select(cell => cell.Disposition.Planned).FirstOrDefault();
        var received = sequence.Cells.Select(cell => cell.Disposition.Received).FirstOrDefault();
        return new FlowFigure(
            [
                $"{title}: {NumberText.Count(planned)} planned",
                $"{NumberText.Count(received)} received",
            ],
            branches,
            $"{title}: {NumberText.Count(planned)} planned, {NumberText.Count(received)} received; {string.Join("; ", branches.Select(branch => branch.LeftOut.Length == 0 ? branch.Box : $"{branch.Box}, beside them {branch.LeftOut}"))}."
        );
    }

    private static FlowBranch Branch(Cell cell)
    {
        string[] others =
        [
            .. cell
                .Pairs.Where(pair => pair.Status != PairStatus.Compared)
                .GroupBy(TradeWords.Of)
                .OrderByDescending(group => group.Count())
                .ThenBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => $"{NumberText.Count(group.Count())} {group.Key}"),
        ];
        return new FlowBranch(
            $"{cell.Key.TimePoint}: {NumberText.Count(cell.Disposition.Count(PairStatus.Compared))} compared",
            string.Join("; ", others)
        );
    }
}
