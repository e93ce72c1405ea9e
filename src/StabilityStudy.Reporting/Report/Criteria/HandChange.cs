using StabilityStudy.Core.Criteria.Bias;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The change of a pair as a pocket calculator gives it, on the scale of a bias criterion: written out, and rounded as it is listed.</summary>
internal static class HandChange
{
    /// <summary>Decimals of a listed change; enough that sums agree with the report's figures to a few hundredths.</summary>
    public const int Decimals = 3;

    /// <summary>The rounded change; exact for changes in the unit.</summary>
    public static decimal Of(PairRecord pair, BiasResult bias)
    {
        var (x, y) = pair.Values();
        return decimal.Round(
            bias.Scale switch
            {
                ChangeScale.Absolute => y - x,
                ChangeScale.Share => (y - x) / Allowed(x, bias.Limit),
                ChangeScale.LogRatio => (decimal)(100 * Math.Log((double)(y / x))),
                ChangeScale.Percent => 100 * (y - x) / x,
            },
            Decimals,
            MidpointRounding.AwayFromZero
        );
    }

    /// <summary>The recipe in words.</summary>
    public static string Recipe(BiasResult bias, string unit) =>
        bias.Scale switch
        {
            ChangeScale.Absolute => "delayed − baseline",
            ChangeScale.Share =>
                $"(delayed − baseline) ÷ allowed, allowed = {TradeWords.Of(bias.Limit, unit)}",
            ChangeScale.LogRatio => "100 × ln(delayed ÷ baseline)",
            ChangeScale.Percent => "100 × (delayed − baseline) ÷ baseline",
        };

    /// <summary>The recipe with the numbers of one pair.</summary>
    public static string WorkedOut(PairRecord pair, BiasResult bias)
    {
        var (x, y) = pair.Values();
        var (before, after) = (NumberText.AsReported(x), NumberText.AsReported(y));
        var steps = bias.Scale switch
        {
            ChangeScale.Absolute => $"{after} − {before}",
            ChangeScale.Share =>
                $"({after} − {before}) ÷ {NumberText.Plain(Allowed(x, bias.Limit))}",
            ChangeScale.LogRatio => $"100 × ln({after} ÷ {before})",
            ChangeScale.Percent => $"100 × ({after} − {before}) ÷ {before}",
        };
        return $"{pair.Specimen}: {steps} = {NumberText.Change((double)Of(pair, bias), Decimals)}";
    }

    private static decimal Allowed(decimal baseline, Limit limit) =>
        Math.Max(limit.AbsoluteInUnit ?? 0, (limit.Percent ?? 0) * baseline / 100);
}
