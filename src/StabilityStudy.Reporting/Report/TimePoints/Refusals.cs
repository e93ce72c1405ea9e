namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>Why estimates of a table, or their intervals, are not computable, each reason once below it.</summary>
internal sealed class Refusals
{
    private readonly List<(string What, string Reason)> _reasons = [];

    /// <summary>The reasons with their numbers; null when there is none.</summary>
    public string? Note =>
        _reasons.Count == 0
            ? null
            : string.Join(
                " ",
                _reasons.Select(
                    (item, index) => $"{TradeWords.Capital(item.What)} ({index + 1}): {item.Reason}"
                )
            );

    /// <summary>The text of the cell: "not computable (1)", or "1.023, no interval (2)" where only the interval is refused.</summary>
    public string Mark(string reason, string? value = null)
    {
        var found = (value is null ? "not computable" : "no interval", reason);
        if (!_reasons.Contains(found))
        {
            _reasons.Add(found);
        }

        var mark = $"{found.Item1} ({_reasons.IndexOf(found) + 1})";
        return value is null ? mark : $"{value}, {mark}";
    }
}
