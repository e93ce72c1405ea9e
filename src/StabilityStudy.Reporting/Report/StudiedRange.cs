using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;

namespace StabilityStudy.Reporting.Report;

/// <summary>From which to which result the baselines of a sequence reach: nothing is shown beyond.</summary>
internal static class StudiedRange
{
    /// <summary>"25.6 to 67.9 s"; null without compared numbers.</summary>
    public static string? Of(Sequence sequence, SequenceNames names)
    {
        decimal[] baselines =
        [
            .. sequence
                .Cells.SelectMany(cell => cell.Pairs)
                .Where(pair => pair.Status == PairStatus.Compared && pair.IsOfNumbers)
                .Select(pair => pair.Values().Baseline),
        ];
        return baselines.Length == 0
            ? null
            : $"{NumberText.Fixed((double)baselines.Min(), names.Analyte.Decimals)} to {NumberText.Fixed((double)baselines.Max(), names.Analyte.Decimals)} {names.Analyte.ShownUnit}".TrimEnd();
    }
}
