using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>What a time point's figures cannot tell apart or leave unseen, in words.</summary>
internal static class CellQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SupportedByMeanOnly = Kinds.Add("supported-by-mean-only", QueryRank.LittleSupport, "a time point is supported by the mean change alone", "add a criterion of kind \"individual\" to the next protocol", point: "Only the mean was judged.");
    internal static readonly QueryKind RareSpecimensUnseen = Kinds.Add("rare-specimens-unseen", QueryRank.LittleSupport, "a mean is supported by so few specimens that rare unstable ones may not be among them", "plan more specimens, so that at least 40 are compared", point: "Few specimens.");
    internal static readonly QueryKind LeftOutPairsCouldOverturn = Kinds.Add("left-out-pairs-could-overturn", QueryRank.StatedAnyway, "a conclusion would change if what was left out had been outside the allowable difference", "check each pair left out, and that its reason does not depend on the result", point: "What was left out could overturn it.");
    internal static readonly QueryKind SupportedByIndividualOnly = Kinds.Add("supported-by-individual-only", QueryRank.LittleSupport, "a time point is supported by single specimens alone; no mean change was judged", "add a bias criterion to the next protocol", point: "No mean was judged.");
    internal static readonly QueryKind ManyBeyondInterval = Kinds.Add("many-beyond-interval", QueryRank.Measurement, "more than one in ten results lies beyond the measuring interval, and no mean holds them", "show that such results are as reported", point: "Many results could not be measured.");
    internal static readonly QueryKind ExcludedBeyondLimit = Kinds.Add("excluded-beyond-limit", QueryRank.Exclusion, "a pair excluded by decision had changed by more than a limit", "check that the reason does not depend on the result", point: "An excluded pair was beyond the limit.");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(Cell cell, StudyProtocol protocol) =>
        [
            .. ConfoundingQueries.Of(cell.Key, cell.Pairs),
            .. OfWideAmounts(cell),
            .. OfUnmeasured(cell),
            .. OfExcluded(cell, protocol),
            .. cell.OwnConclusion == Conclusion.Supported ? OfSupported(cell) : [],
        ];

    /// <summary>Pairs beyond the measuring interval are in no mean.</summary>
    private static IEnumerable<DataQuery> OfUnmeasured(Cell cell)
    {
        const int oneIn = 10;
        var beyond = cell.Pairs.Count(pair => pair.Status == PairStatus.BeyondInterval);
        if (beyond > 0 && oneIn * beyond > cell.Estimates.Compared)
        {
            yield return Attention(
                cell,
                ManyBeyondInterval,
                StudyFileNames.Usual.Results,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Counted.Of(beyond, "specimen")} beyond the measuring interval, so that the mean and every line are computed from the other {cell.Estimates.Compared}"
                ),
                "Show that such results are as reported; their change cannot be known."
            );
        }
    }

    private static IEnumerable<DataQuery> OfExcluded(Cell cell, StudyProtocol protocol)
    {
        var outside = cell
            .Pairs.Where(pair =>
                pair.Status == PairStatus.Excluded
                && ExcludedChange.IsOutside(pair, cell.Key, protocol)
            )
            .Select(pair => pair.Specimen)
            .ToImmutableArray();
        if (!outside.IsEmpty)
        {
            yield return Attention(
                cell,
                ExcludedBeyondLimit,
                "study.toml",
                $"excluded by decision although its change was beyond a limit: {Doubts.ControlDoubts.Names(outside)}"
            ) with
            {
                Specimen = outside is [var one] ? new(one, cell.Key.TimePoint) : null,
            };
        }
    }

    /// <summary>An amount in the unit that is a large part of the results it is allowed for; the protocol alone cannot tell.</summary>
    private static IEnumerable<DataQuery> OfWideAmounts(Cell cell)
    {
        var amounts = cell
            .Criteria.Select(result => result.LimitUse)
            .OfType<LimitUse>()
            .Where(use => use.Limit.AbsoluteInUnit is not null)
            .ToImmutableArray();
        if (amounts.IsEmpty || MiddleBaseline(cell) is not (> 0 and var middle))
        {
            yield break;
        }

        foreach (var use in amounts)
        {
            var limit = use.Limit;
            var (serves, widest) = use.OfMean
                ? ("a mean", WideLimits.PercentOfMean)
                : ("single specimens", WideLimits.PercentOfOne);
            if (
                limit.AbsoluteInUnit is { } amount
                && 100 * amount / middle is var percent
                && percent > widest
            )
            {
                yield return Attention(
                    cell,
                    SharedKinds.WideLimit,
                    "protocol.toml",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the limit \"{limit.Id}\" allows {percent:0} % of the middle baseline of {middle:0.###}, wide for {serves} (above {widest} %)"
                    )
                );
            }
        }
    }

    private static decimal? MiddleBaseline(Cell cell)
    {
        var baselines = cell
            .Pairs.Where(pair => pair.IsOfNumbers)
            .Select(pair => pair.Values().Baseline)
            .Order()
            .ToImmutableArray();
        return baselines.IsEmpty ? null : baselines[baselines.Length / 2];
    }

    private static IEnumerable<DataQuery> OfSupported(Cell cell)
    {
        if (cell.Criteria.All(result => result is BiasResult))
        {
            yield return Attention(
                SupportedByMeanOnly,
                "protocol.toml",
                "supported by the mean change alone; a mean can stay where it is while single patients' results move"
            );
        }

        if (
            cell.Criteria.Any(result => result is IndividualResult)
            && !cell.Criteria.Any(result => result is BiasResult)
        )
        {
            yield return Attention(
                SupportedByIndividualOnly,
                "protocol.toml",
                "supported by single specimens alone; a small shift of every result, which this cannot see, moves patients across decision levels",
                "Look at the mean change among the estimates, and add a criterion of kind \"bias\" to the next protocol."
            );
        }

        if (
            cell.Criteria.Any(result => result is BiasResult)
            && cell.Estimates.Compared < BiasCriterion.FewestForRare
        )
        {
            yield return Attention(
                RareSpecimensUnseen,
                StudyFileNames.Usual.Specimens,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the mean is of {cell.Estimates.Compared} specimens; {100 * Math.Pow(0.95, cell.Estimates.Compared):0} of 100 such studies would include no patient with an instability that affects 1 in 20"
                )
            );
        }

        if (
            cell.Robustness.FirstOrDefault(line =>
                line.Question.Kind == RobustnessKind.LeftOutCountedOutside
            ) is
            { Changes: true, Question.Count: { } leftOut }
        )
        {
            yield return Attention(
                LeftOutPairsCouldOverturn,
                StudyFileNames.Usual.Results,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"if {(leftOut == 1 ? "one pair" : $"{leftOut} pairs")} left out at this time point had been outside the allowable difference, it would not be supported"
                )
            );
        }

        DataQuery Attention(QueryKind kind, string file, string message, string? action = null) =>
            CellQueries.Attention(cell, kind, file, message, action);
    }

    private static DataQuery Attention(
        Cell cell,
        QueryKind kind,
        string file,
        string message,
        string? action = null
    ) =>
        new(kind, new(file, null, null), "", message + ".", action)
        {
            Scope = QueryScope.Of(cell.Key),
        };
}
