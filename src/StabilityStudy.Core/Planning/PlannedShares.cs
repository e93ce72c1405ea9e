using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Planning;

/// <summary>How many specimens may fail, and which baselines are wanted: what a protocol asks, counted.</summary>
internal static class PlannedShares
{
    /// <summary>Of every criterion that holds a share by an exact bound.</summary>
    public static ImmutableArray<AllowedFailures> Of(CellContext context, int specimens) =>
        [
            .. from item in context.Applying
            let criterion = item.Criterion
            where criterion.SharePercentRequired is > 0 and < 100 && !criterion.IsEstimateAlone
            select Of(criterion, criterion.SharePercentRequired!.Value, specimens),
        ];

    private static AllowedFailures Of(Criterion criterion, decimal percent, int specimens)
    {
        var share = (double)(percent / 100);
        var allowed = AcceptanceNumber.Of(specimens, share, criterion.ConfidenceLevel);
        var more = specimens;
        do
        {
            more++;
        } while (
            AcceptanceNumber.Of(more, share, criterion.ConfidenceLevel) is var next
            && (next is null || next <= allowed)
        );

        return new(criterion.Id, criterion.Kind, percent, specimens, allowed, more);
    }

    /// <summary>Of every level that a criterion judges.</summary>
    public static ImmutableArray<LevelRange> Levels(CellContext context)
    {
        var analyte = context.Analyte;
        var planned = analyte
            .PlannedNumbers.Where(part => part.Group == context.Group.Id)
            .ToImmutableArray();
        var range = analyte.PlannedRanges.FirstOrDefault(item => item.Group == context.Group.Id);
        return
        [
            .. context
                .Applying.Select(item => item.Criterion.JudgedLevels)
                .OfType<ImmutableArray<decimal>>()
                .SelectMany(levels => levels.IsEmpty ? analyte.DecisionLevels : levels)
                .Distinct()
                .Order()
                .Select(level => new LevelRange(
                    level,
                    LevelCoverage.FewestOnEitherSide,
                    planned.IsEmpty
                        ? null
                        : planned.Where(part => part.Highest < level).Sum(part => part.Specimens),
                    planned.IsEmpty
                        ? null
                        : planned.Where(part => part.Lowest >= level).Sum(part => part.Specimens),
                    range is null ? null : range.Lowest < level && range.Highest > level
                )),
        ];
    }
}
