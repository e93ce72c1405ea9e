using StabilityStudy.Core.Criteria.Bias;

namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>What the means of a sequence show against their limit.</summary>
internal static class MeanFinding
{
    /// <summary>"inside the limit up to 6 h, not shown to be inside at 8 h"; null where no mean is held to a limit.</summary>
    public static string? Of(Sequence sequence)
    {
        var means = Deciding(sequence).ToImmutableArray();
        var inside = means.TakeWhile(item => item.Bias.Verdict == Verdict.Met).ToImmutableArray();
        string?[] parts =
        [
            inside.IsEmpty ? null : $"mean inside the limit up to {inside[^1].Cell.Key.TimePoint}",
            means.Skip(inside.Length).FirstOrDefault() is { Bias: { } bias } open
                ? bias.Verdict == Verdict.NotMet
                    ? $"mean past the limit at {open.Cell.Key.TimePoint}"
                    : $"mean not shown to be inside the limit at {open.Cell.Key.TimePoint}"
                : null,
        ];
        return means.IsEmpty ? null : string.Join(", ", parts.OfType<string>());
    }

    /// <summary>The time points with a mean that a two-sided limit judges.</summary>
    public static IEnumerable<(Cell Cell, BiasResult Bias)> Deciding(Sequence sequence) =>
        from cell in sequence.Cells
        let bias = cell.Criteria.OfType<BiasResult>().FirstOrDefault()
        where bias is { Mean.Value: not null, LowerLimit: < 0, UpperLimit: > 0 }
        select (cell, bias);
}
