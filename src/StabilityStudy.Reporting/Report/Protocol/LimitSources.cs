namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>Where limits come from, what else could have been chosen and why it was not, and who chose.</summary>
internal static class LimitSources
{
    /// <summary>With more limits than this the sources stand on a page of their own.</summary>
    private const int MostBeside = 2;

    /// <summary>Whether they stand beside the criteria.</summary>
    public static bool FitBeside(StudyProtocol protocol) => protocol.Limits.Length <= MostBeside;

    /// <summary>Those of a limit, in sentences.</summary>
    public static string Of(StudyProtocol protocol, string id)
    {
        var limit = protocol.Limits.First(item => item.Id == id);
        var unit = UnitOf(protocol, id);
        return $"{Source(limit)}{(limit.Alternatives.IsEmpty ? "" : $" Could have been chosen instead: {string.Join("; ", limit.Alternatives.Select(other => Other(other, unit)))}.")}";
    }

    private static string Source(Limit limit) =>
        $"Source: {RationaleWords.Unstopped(limit.Source)}.{RationaleWords.Stated("this limit", limit.Rationale, [])}";

    /// <summary>All of them, a term each, where they do not fit beside the criteria.</summary>
    public static IEnumerable<Block> Blocks(StudyProtocol protocol)
    {
        if (!FitBeside(protocol))
        {
            yield return new DefinitionList([
                .. protocol.Limits.Select(limit => new Definition(limit.Id, Source(limit))),
                .. protocol
                    .Limits.SelectMany(limit =>
                        limit.Alternatives.Select(other => (Limit: limit.Id, Other: other))
                    )
                    .GroupBy(item => (item.Other.Name, item.Other.WhyNot))
                    .Select(same => new Definition(
                        "Instead",
                        $"{TradeWords.Capital(same.Key.Name)}: not taken, {RationaleWords.Unstopped(same.Key.WhyNot)}. {string.Join("; ", same.GroupBy(item => (Amount: Amount(item.Other, UnitOf(protocol, item.Limit)), item.Other.Source)).Select(item => $"{string.Join(", ", item.Select(one => one.Limit))}{item.Key.Amount} ({RationaleWords.Unstopped(item.Key.Source)})"))}."
                    )),
            ]);
        }
    }

    private static string UnitOf(StudyProtocol protocol, string id) =>
        protocol
            .Criteria.SelectMany(criterion => criterion.Limits)
            .Where(choice => choice.Limit == id)
            .Select(choice => protocol.Analytes.First(item => item.Id == choice.Analyte).ShownUnit)
            .FirstOrDefault("");

    private static string Other(OtherLimit other, string unit) =>
        $"{other.Name}{Amount(other, unit)} ({RationaleWords.Unstopped(other.Source)}): not taken, {RationaleWords.Unstopped(other.WhyNot)}";

    private static string Amount(OtherLimit other, string unit) =>
        (other.Percent, other.AbsoluteInUnit) switch
        {
            (null, null) => "",
            var (percent, absolute) => " "
                + TradeWords.Of(new Limit("", percent, absolute, ""), unit),
        };
}
