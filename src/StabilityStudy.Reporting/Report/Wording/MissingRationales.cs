namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>The limits and shares of which the protocol does not state who chose them, or why.</summary>
internal static class MissingRationales
{
    /// <summary>"who chose limit aptt-bias, and why; the reason for limit aptt-each"; null where nothing is missing.</summary>
    public static string? OfLimits(StudyProtocol protocol) => Of(Limits(protocol));

    /// <summary>The same of shares.</summary>
    public static string? OfShares(StudyProtocol protocol) => Of(Shares(protocol));

    /// <summary>The same of both.</summary>
    public static string? Of(StudyProtocol protocol) =>
        Of(Limits(protocol).AddRange(Shares(protocol)));

    private static ImmutableArray<(string What, Rationale Rationale)> Limits(
        StudyProtocol protocol
    ) => [.. protocol.Limits.Select(limit => ("limit " + limit.Id, limit.Rationale))];

    private static ImmutableArray<(string What, Rationale Rationale)> Shares(
        StudyProtocol protocol
    ) =>
        [
            .. protocol
                .Criteria.Where(criterion => criterion.SharePercentRequired is not null)
                .Select(criterion => ("the share of " + criterion.Id, criterion.Rationale)),
        ];

    private static string? Of(ImmutableArray<(string What, Rationale Rationale)> chosen)
    {
        string[] missing =
        [
            .. Lacking(
                chosen,
                rationale => rationale is { ChosenBy: null, Reason: null },
                "who chose {0}, and why"
            ),
            .. Lacking(
                chosen,
                rationale => rationale is { ChosenBy: null, Reason: not null },
                "who chose {0}"
            ),
            .. Lacking(
                chosen,
                rationale => rationale is { ChosenBy: not null, Reason: null },
                "the reason for {0}"
            ),
        ];
        return missing.Length == 0 ? null : string.Join("; ", missing);
    }

    private static IEnumerable<string> Lacking(
        ImmutableArray<(string What, Rationale Rationale)> chosen,
        Func<Rationale, bool> lacks,
        string sentence
    )
    {
        var what = chosen
            .Where(item => lacks(item.Rationale))
            .Select(item => item.What)
            .ToImmutableArray();
        if (!what.IsEmpty)
        {
            yield return sentence.Replace("{0}", ScopeWords.List(what), StringComparison.Ordinal);
        }
    }
}
