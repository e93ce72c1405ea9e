namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>From which to which result the baselines of a sequence reach, at its longest supported time point where it has one: nothing is shown beyond.</summary>
internal static class StudiedRange
{
    /// <summary>"25.6 to 67.9 s"; null without compared numbers.</summary>
    public static string? Of(Sequence sequence, SequenceNames names)
    {
        decimal[] baselines =
        [
            .. Shown(sequence)
                .SelectMany(cell => cell.Pairs)
                .Where(pair => pair.Status == PairStatus.Compared && pair.IsOfNumbers)
                .Select(pair => pair.Values().Baseline),
        ];
        return baselines.Length == 0
            ? null
            : $"{NumberText.Fixed((double)baselines.Min(), names.Analyte.Decimals)} to {NumberText.Fixed((double)baselines.Max(), names.Analyte.Decimals)} {names.Analyte.ShownUnit}".TrimEnd();
    }

    /// <summary>The time points that a row of the decision is about: the longest supported one, or all where none is.</summary>
    public static ImmutableArray<Cell> Shown(Sequence sequence) =>
        sequence.Cells.LastOrDefault(cell => cell.Conclusion == Conclusion.Supported) is { } longest
            ? [longest]
            : sequence.Cells;
}
