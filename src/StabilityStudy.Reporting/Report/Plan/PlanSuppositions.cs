using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>What a plan supposes and what it leaves out, in sentences.</summary>
internal static class PlanSuppositions
{
    /// <summary>More rows are not told one by one: their sources stand in the protocol.</summary>
    private const int MostRows = 4;

    public const string LeftOut =
        "Left out: rare unstable specimens and long tails, specimens and tubes that are lost or fail, runs left out for their controls, bridging plasma, results beyond the measuring interval, a second look. Most of these make support rarer. Over several instruments each is on its own.";

    /// <summary>What was expected, a sentence a row.</summary>
    public static IEnumerable<string> Expected(StudyPlan plan) =>
        plan.Rows.Length > MostRows
            ?
            [
                "Expected changes and SDs: as the protocol states them for every time (expected_changes), else from a published curve of the aPTT or PT without anticoagulant; SD 3 % where nothing is stated.",
            ]
            : plan.Rows.Select(row => Expected(plan, row));

    /// <summary>How the chances were computed.</summary>
    public static string Simulated(StudyPlan plan) =>
        $"Simulated: up to {plan.Request.Studies.ToString("N0", CultureInfo.InvariantCulture)} studies for each chance, seed {plan.Request.Seed.ToString(CultureInfo.InvariantCulture)}, within {ChanceWords.Tolerance(plan.Request)} (95 %), each judged by the criteria of this protocol as a real study is. Changes are normal among specimens; half of the variance that the CV states belongs to each run, half to each result.";

    /// <summary>Where something was supposed that the protocol could state.</summary>
    public static IEnumerable<string> Supposed(StudyPlan plan)
    {
        if (plan.DaysFrom == DaysOrigin.Supposed)
        {
            yield return $"{NumberText.Count(plan.Days)} days are supposed: state planned_days in protocol.toml.";
        }

        var ranges = plan
            .Rows.Where(row => row.TimePoints.Any(point => point.RangeIsSupposed))
            .Select(row => ChanceTable.Name(plan, row))
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        if (ranges.Length > 0)
        {
            yield return $"The range of baselines is supposed to lie around the decision levels, else within the measuring interval ({string.Join("; ", ranges)}): state planned_ranges in protocol.toml.";
        }
    }

    private static string Expected(StudyPlan plan, PlannedRow row)
    {
        var first = row.TimePoints[0].Expected;
        var changes = string.Join(
            ", ",
            row.TimePoints.Select(point =>
                $"{ChanceWords.Change(point.Expected)} at {point.TimePoint}"
            )
        );
        var source =
            first.Source is { } stated ? $" ({stated})"
            : first.Percent is null ? ""
            : $" ({Drift.PublishedDrift.Source})";
        var cv = row.Analyte.BetweenRunCvPercent is { } known
            ? $", CV {NumberText.Plain(known)} % (protocol)"
            : "";
        return first.Percent is null && row.TimePoints.All(point => point.Expected.Percent is null)
            ? $"{ChanceTable.Name(plan, row)}: no published change is stated (expected_changes in protocol.toml); {ChanceWords.Sd(first)}{cv}."
            : $"{ChanceTable.Name(plan, row)}: change {changes}{source}, {ChanceWords.Sd(first)}{cv}.";
    }
}
