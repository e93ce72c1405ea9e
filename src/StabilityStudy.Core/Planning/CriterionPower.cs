namespace StabilityStudy.Core.Planning;

/// <summary>The chance that one criterion is met, by its formula, as if no other were asked. There is one where the change and its limit are both in percent, so that baselines play no part.</summary>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Power">The chance, 0 to 1, with specimens that have nothing in common with others of their day.</param>
public sealed record CriterionPower(string Criterion, double Power)
{
    /// <summary>The criteria with a formula: a mean or a share that an interval or bound holds to a limit in percent.</summary>
    internal static ImmutableArray<CriterionPower> Of(
        CellContext context,
        SupposedResults supposed,
        double meanPercent
    ) =>
        [
            .. from item in context.Applying
            where item.Limit is { Percent: not null, AbsoluteInUnit: null }
            let power = item.Criterion.Power(
                (double)item.Limit!.Percent!.Value,
                supposed,
                meanPercent
            )
            where power is not null
            select new CriterionPower(item.Criterion.Id, power.Value),
        ];
}
