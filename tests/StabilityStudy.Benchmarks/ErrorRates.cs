using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Benchmarks;

/// <summary>
/// Draws many studies of every scenario that the tests draw few of, and prints how often they claim, as a Markdown page.
/// </summary>
internal static class ErrorRates
{
    /// <summary>The word that asks for it; the number of studies a scenario follows.</summary>
    public const string Word = "error-rates";

    private const int UsualStudies = 20_000;

    /// <summary>A rate so far above its nominal value is not chance.</summary>
    private const double StandardErrors = 4;

    private const double Nominal = 0.05;

    /// <param name="studies">How many studies a scenario has; the usual number when null.</param>
    /// <param name="section">The beginning of the headings that are wanted; all when null.</param>
    public static void Print(string? studies, string? section)
    {
        var most = studies is null
            ? UsualStudies
            : int.Parse(studies, NumberStyles.None, CultureInfo.InvariantCulture);
        var rates = AllScenarios
            .InOrder.Where(scenario =>
                section is null || scenario.Section.StartsWith(section, StringComparison.Ordinal)
            )
            .Select(scenario =>
            {
                var rate = scenario.Run(Math.Max(most / scenario.Work, 1));
                Console.Error.WriteLine(Invariant($"{rate.Rate:0.0000}  {scenario.Data}"));
                return rate;
            })
            .ToList();
        PrintHead(most);
        foreach (var printed in rates.GroupBy(rate => rate.Scenario.Section))
        {
            Print(printed.Key, [.. printed]);
        }

        PrintTooHigh(rates);
    }

    private static void PrintHead(int studies) =>
        Console.WriteLine(
            Invariant(
                $"""
                # How often *supported* is concluded

                Invented studies, concluded by the program's own criteria; made by `dotnet run -c Release --project tests/StabilityStudy.Benchmarks -- {Word} {studies}`.

                - A *false claim* is *supported* (or a criterion met) although the true change or share is exactly the allowed one, unless the row states another truth. Nominal: at most {Nominal:0.00}.
                - *No control*: a rule without error control, a truth that the rule cannot see, or a comparison with what the program does not do.
                - Each number is a rate ± its binomial standard error; the last column is the number of studies behind each. 0.0000 at a small n mostly means that so few specimens cannot meet the criterion.
                - Seeds: every scenario has its own, computed from its words and n, so the tests draw the same studies, only fewer.
                - Unless a row says otherwise: allowable bias 7.5 %, change SD 3 % among specimens, interval of 90 %, at least five collection days, the same number of specimens on each.
                """
            )
        );

    private static void Print(string section, IReadOnlyList<SimulatedRate> rates)
    {
        var sizes = rates.Select(rate => rate.Scenario.Specimens).Distinct().Order().ToList();
        Console.WriteLine();
        Console.WriteLine("## " + section);
        Console.WriteLine();
        Console.WriteLine(
            "| data | read as | "
                + string.Join(" | ", sizes.Select(n => Invariant($"n = {n}")))
                + " | studies |"
        );
        Console.WriteLine(
            "| --- | --- |" + string.Concat(sizes.Select(_ => " ---: |")) + " ---: |"
        );
        foreach (var row in rates.GroupBy(rate => rate.Scenario.Data))
        {
            var cells = sizes.Select(n =>
                row.FirstOrDefault(rate => rate.Scenario.Specimens == n) is { } rate
                    ? Invariant($"{rate.Rate:0.0000} ± {rate.StandardError:0.0000}")
                    : "–"
            );
            Console.WriteLine(
                Invariant(
                    $"| {row.Key} | {Words(row.First().Scenario.Reading)} | {string.Join(" | ", cells)} | {row.First().Studies} |"
                )
            );
        }
    }

    private static void PrintTooHigh(IEnumerable<SimulatedRate> rates)
    {
        Console.WriteLine();
        Console.WriteLine(
            Invariant(
                $"## Controlled by intent, yet above {Nominal:0.00} by more than {StandardErrors:0} standard errors"
            )
        );
        Console.WriteLine();
        Console.WriteLine(
            "Those that METHODS.md names: fewer than 40 specimens, or rare large changes with hardly any imprecision, of which a sample may hold none."
        );
        Console.WriteLine();
        foreach (
            var rate in rates
                .Where(rate =>
                    rate.Scenario.Reading == Reading.Controlled
                    && rate.Rate
                        > Nominal
                            + (StandardErrors * Math.Sqrt(Nominal * (1 - Nominal) / rate.Studies))
                )
                .OrderByDescending(rate => rate.Rate)
        )
        {
            Console.WriteLine(
                Invariant(
                    $"- {rate.Rate:0.000}: {rate.Scenario.Section}; {rate.Scenario.Data}; n = {rate.Scenario.Specimens}"
                )
            );
        }
    }

    private static string Words(Reading reading) =>
        reading switch
        {
            Reading.Controlled => "false claim",
            Reading.Power => "power",
            _ => "false claim, no control",
        };

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
