namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>Why estimates of a table are not computable, each reason once below it.</summary>
internal sealed class Refusals
{
    private readonly List<string> _reasons = [];

    /// <summary>The reasons with their numbers; null when there is none.</summary>
    public string? Note =>
        _reasons.Count == 0
            ? null
            : string.Join(
                " ",
                _reasons.Select((reason, index) => $"Not computable ({index + 1}): {reason}")
            );

    /// <summary>The text of the cell: "not computable (1)".</summary>
    public string Mark(string reason)
    {
        if (!_reasons.Contains(reason, StringComparer.Ordinal))
        {
            _reasons.Add(reason);
        }

        return $"not computable ({_reasons.IndexOf(reason) + 1})";
    }
}
