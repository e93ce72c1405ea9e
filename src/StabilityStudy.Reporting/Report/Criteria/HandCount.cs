using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>A criterion on single specimens worked out by hand: who is outside, and the binomial sum behind the exact bound.</summary>
internal static class HandCount
{
    /// <summary>More terms than these nobody adds up by hand.</summary>
    private const int MostTerms = 6;

    public static Table Of(IndividualResult individual, Cell cell, SequenceNames names)
    {
        var agreement = individual.Agreement;
        var (n, outside) = (agreement.Counted, agreement.Outside);
        var most = individual.MostOutside;
        return new Table(
            $"Single specimens (criterion {individual.Criterion})",
            [
                new Column("Step", ColumnAlignment.Left, 5),
                new Column("Result", ColumnAlignment.Left, 5),
            ],
            [
                Step(
                    $"Specimens that count; outside {TradeWords.Of(individual.Limit, names.Analyte.ShownUnit)}",
                    $"{NumberText.Count(n)}; {NumberText.Count(outside)}"
                ),
                Step("Outside", SpecimenTrail.Outside(individual, cell)),
                Step(
                    $"Most that may be outside: the largest number for which the chance of so few, as below, is at most {Error(individual)}",
                    most is { } allowed ? NumberText.Count(allowed) : "none can show it"
                ),
                .. Chance(individual, n, outside),
                Step(
                    $"Required: at least {NumberText.Percent(individual.RequiredShare)} of specimens inside",
                    ReasonWords.Of(individual.Reasons[0])
                ),
            ],
            null
        );
    }

    /// <summary>The binomial sum behind the exact bound, written out where it has few terms.</summary>
    private static IEnumerable<Row> Chance(IndividualResult individual, int n, int outside)
    {
        if (outside >= MostTerms || n == 0)
        {
            yield break;
        }

        var share = individual.RequiredShare;
        var terms = new List<string>();
        var total = 0.0;
        var ways = 1.0;
        for (var i = 0; i <= outside; i++)
        {
            total += ways * Math.Pow(1 - share, i) * Math.Pow(share, n - i);
            var inside = NumberText.Plain((decimal)share) + Power(n - i);
            terms.Add(
                i == 0
                    ? inside
                    : $"{NumberText.Fixed(ways, 0)} × {NumberText.Plain((decimal)(1 - share))}{Power(i)} × {inside}"
            );
            ways = ways * (n - i) / (i + 1);
        }

        yield return Step(
            $"Chance of so few outside, were the true share {NumberText.Percent(share)}: {string.Join(" + ", terms)}",
            $"{NumberText.Fixed(total, 4)}, {(total <= 1 - individual.ConfidenceLevel ? "at most" : "above")} {Error(individual)}"
        );
    }

    /// <summary>1 − confidence, all digits of it: 0.05 or 0.025.</summary>
    private static string Error(IndividualResult individual) =>
        NumberText.Plain(1 - (decimal)individual.ConfidenceLevel);

    private static string Power(int exponent) =>
        exponent == 1 ? "" : NumberText.Superscript(exponent);

    private static Row Step(string step, string result) =>
        new([new TableCell(step), new TableCell(result)]);
}
