namespace StabilityStudy.Core.Planning;

/// <summary>Results that would arise as a protocol plans them.</summary>
/// <param name="Results">How they arise.</param>
/// <param name="RangeIsSupposed">Whether the protocol states no range of baselines, so that one around the decision levels stands for it.</param>
internal sealed record SupposedFromPlan(SupposedResults Results, bool RangeIsSupposed)
{
    /// <summary>Days on which specimens are collected where the protocol does not say: the upper end of what is recommended.</summary>
    public const int UsualDays = 10;

    /// <summary>Studies with more specimens are not simulated: they would take minutes, and their chances hang on the change alone.</summary>
    public const int MostSpecimens = 500;

    /// <summary>Width of the planned range in SDs of the logarithms: it holds nine specimens of ten of a normal distribution.</summary>
    private const double NineOfTen = 2 * 1.645;

    /// <summary>SD of the logarithms of the baselines where the protocol states no range: 25 %, between a group without treatment and one with.</summary>
    private const double UsualLogSd = 0.25;

    /// <summary>Days and runs as planned, baselines as planned in each part of their range, and the stated CV half of runs and half of repeats (in variance).</summary>
    /// <param name="context">The time point.</param>
    /// <param name="specimens">Number of specimens at the time point.</param>
    /// <param name="days">Number of days; at most one a specimen counts.</param>
    /// <param name="specimenSdPercent">SD of the change among specimens, percent.</param>
    /// <param name="gap">What the protocol does not state that is needed.</param>
    /// <returns>Null where something is missing.</returns>
    internal static SupposedFromPlan? Of(
        CellContext context,
        int specimens,
        int days,
        double specimenSdPercent,
        out PlanGap? gap
    )
    {
        gap = null;
        var analyte = context.Analyte;
        if (analyte.IsQualitative)
        {
            gap = PlanGap.Classes;
            return null;
        }

        if (analyte.BetweenRunCvPercent is not { } cv)
        {
            gap = PlanGap.NoImprecision;
            return null;
        }

        if (
            (double)cv >= SupposedFromResults.WidestSdPercent
            || specimenSdPercent >= SupposedFromResults.WidestSdPercent
        )
        {
            gap = PlanGap.TooWide;
            return null;
        }

        if (specimens > MostSpecimens)
        {
            gap = PlanGap.TooMany;
            return null;
        }

        if (Baselines(context) is not { } baselines)
        {
            gap = PlanGap.NoBaselines;
            return null;
        }

        var half = (double)cv / Math.Sqrt(2);
        return new(
            new SupposedResults(
                SupposedConduct.Even(specimens, Math.Min(days, specimens)),
                SameRun: false,
                baselines.Median,
                baselines.LogSd,
                specimenSdPercent,
                half / Math.Sqrt(context.Protocol.Replicates),
                half
            )
            {
                Parts =
                [
                    .. analyte
                        .PlannedNumbers.Where(part => part.Group == context.Group.Id)
                        .Select(part => new SupposedBaselines(
                            (double)part.Lowest,
                            (double)part.Highest,
                            // A larger study has the same shares in each part.
                            (int)
                                Math.Round(
                                    (double)part.Specimens * specimens / context.Group.Specimens
                                )
                        )),
                ],
            },
            !baselines.AreStated
        );
    }

    private static (double Median, double LogSd, bool AreStated)? Baselines(CellContext context)
    {
        var analyte = context.Analyte;
        if (
            analyte.PlannedRanges.FirstOrDefault(item => item.Group == context.Group.Id) is
            { Lowest: > 0 } range
        )
        {
            var (lowest, highest) = ((double)range.Lowest, (double)range.Highest);
            return (
                Math.Sqrt(lowest * highest),
                Math.Log(highest / lowest) / NineOfTen,
                AreStated: true
            );
        }

        decimal[] around =
            analyte.DecisionLevels is { IsEmpty: false } levels ? [levels[0], levels[^1]]
            : analyte.MeasuringInterval is { Lowest: > 0 } interval
                ? [interval.Lowest, interval.Highest]
            : [];
        return around is [> 0, > 0]
            ? (Math.Sqrt((double)around[0] * (double)around[1]), UsualLogSd, AreStated: false)
            : null;
    }
}

/// <summary>What a protocol does not state, so that a time point is not simulated.</summary>
public enum PlanGap
{
    /// <summary>Nothing is missing: results are classes, of which there are no means.</summary>
    Classes,

    /// <summary>The imprecision of the analyte.</summary>
    NoImprecision,

    /// <summary>Any range of baselines, decision level or measuring interval.</summary>
    NoBaselines,

    /// <summary>Nothing is missing: the spread is so wide that results near zero would be drawn.</summary>
    TooWide,

    /// <summary>Nothing is missing: there are more specimens or time points than are simulated.</summary>
    TooMany,
}
