namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>
/// How far from a level at least one of two results must lie for a change of side to be clear. Near a level imprecision and rounding alone carry results across, so that counting every crossing asks of a
/// test what no test can do.
/// </summary>
internal static class UnclearZone
{
    /// <summary>Normal quantile that leaves 2.5 % on either side.</summary>
    private const decimal TwoSided95 = 1.96m;

    private const decimal RootOfTwo = 1.4142135623730950488m;

    /// <summary>
    /// The zone of a criterion that states none: the smallest multiple of the reporting increment that is at least 1.96·√2·CV·level/100, what two results without any change differ by at the level; one increment without a stated CV.
    /// </summary>
    public static decimal Usual(decimal level, Analyte analyte)
    {
        var increment = 1m;
        for (var i = 0; i < analyte.Decimals; i++)
        {
            increment /= 10;
        }

        var noise = TwoSided95 * RootOfTwo * (analyte.BetweenRunCvPercent ?? 0) * level / 100;
        return Math.Max(decimal.Ceiling(noise / increment), 1) * increment;
    }
}
