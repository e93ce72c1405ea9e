using System.Globalization;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>The controls of a run: two levels in range, and two results of a bridging plasma.</summary>
internal static class InventedControls
{
    /// <summary>Half width of the allowed range, in CVs.</summary>
    private const decimal RangeInCvs = 3;

    public static IEnumerable<Dictionary<string, string>> Of(
        Analyte analyte,
        string run,
        DateTimeOffset firstTest,
        InventedResults results
    )
    {
        var at = firstTest.AddMinutes(-12);
        return analyte.IsQualitative
            ? [Class("QC-N", analyte.Categories[0], 0), Class("QC-P", analyte.Categories[^1], 3)]
            :
            [
                Control("QC-1", analyte.PlannedRanges.Min(range => range.Lowest) * 1.25m, 0),
                Control("QC-2", analyte.PlannedRanges.Max(range => range.Highest) * 0.8m, 3),
                Bridging(1, 6),
                Bridging(2, 9),
            ];

        Dictionary<string, string> Class(string code, string result, int minute) =>
            Row(code, minute, result, "control", result);

        Dictionary<string, string> Control(string code, decimal target, int minute)
        {
            target = Math.Round(target, analyte.Decimals);
            var half = target * (analyte.BetweenRunCvPercent ?? 2) / 100 * RangeInCvs;
            var (low, high) = (
                Math.Round(target - half, analyte.Decimals),
                Math.Round(target + half, analyte.Decimals)
            );

            // A control out of range is repeated before anything else is tested; the run is in control then.
            var result = Enumerable
                .Range(1, 50)
                .Select(test =>
                    Math.Round(
                        (decimal)results.Measured(analyte, (double)target, run, $"{code} {test}"),
                        analyte.Decimals
                    )
                )
                .First(value => value >= low && value <= high);
            var row = Row(code, minute, Text(result), "control", Text(target));
            row["allowed_low"] = Text(low);
            row["allowed_high"] = Text(high);
            return row;
        }

        Dictionary<string, string> Bridging(int test, int minute) =>
            Row(
                "BP-1",
                minute,
                Text(
                    (decimal)
                        results.Measured(
                            analyte,
                            (double)(
                                analyte.DecisionLevels.IsEmpty
                                    ? analyte.PlannedRanges[0].Lowest
                                    : analyte.DecisionLevels[0]
                            ),
                            run,
                            $"BP-1 {test}"
                        )
                ),
                "bridging plasma",
                ""
            );

        Dictionary<string, string> Row(
            string code,
            int minute,
            string result,
            string kind,
            string target
        ) =>
            new()
            {
                ["control"] = code,
                ["analyte"] = analyte.Id,
                ["run"] = run,
                ["tested_at"] = InventedFiles.Time(at.AddMinutes(minute), DateTimeOffset.MaxValue),
                ["result"] = result,
                ["unit"] = analyte.Unit,
                ["target"] = target,
                ["kind"] = kind,
            };

        string Text(decimal value) =>
            Math.Round(value, analyte.Decimals)
                .ToString("F" + analyte.Decimals, CultureInfo.InvariantCulture);
    }
}
