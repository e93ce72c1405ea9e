using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Planning;

/// <summary>Two results of one specimen that a facility has from a pilot.</summary>
/// <param name="Analyte">Key of the analyte; null where the file has one only.</param>
/// <param name="Group">Key of the patient group; null where it does not say.</param>
/// <param name="TimePoint">After how long the second was tested; null where it does not say.</param>
/// <param name="Baseline">First result, above zero.</param>
/// <param name="Delayed">Second result.</param>
public sealed record PilotPair(
    string? Analyte,
    string? Group,
    TimePoint? TimePoint,
    decimal Baseline,
    decimal Delayed
)
{
    /// <summary>Fewer pairs say next to nothing of a spread: our own choice.</summary>
    public const int Fewest = 5;

    /// <summary>The expected change with the spread of the pairs of its own time point, where there are enough, else of all of its analyte and group.</summary>
    /// <remarks>The mean change of a pilot is not taken: a study planned for the change that a few pairs showed is planned for their luck (Kraemer and others 2006, Arch Gen Psychiatry 63:484–489, from memory).</remarks>
    internal static PlannedChange Spread(
        ImmutableArray<PilotPair> pairs,
        PlannedChange expected,
        CellContext context
    )
    {
        var ofAnalyte = pairs
            .Where(pair =>
                (pair.Analyte ?? context.Analyte.Id) == context.Analyte.Id
                && (pair.Group ?? context.Group.Id) == context.Group.Id
            )
            .ToImmutableArray();
        var ofPoint = ofAnalyte
            .Where(pair => pair.TimePoint == context.TimePoint)
            .ToImmutableArray();
        var taken =
            ofPoint.Length >= Fewest ? ofPoint
            : ofAnalyte.Length >= Fewest ? ofAnalyte
            : [];
        if (
            taken.IsEmpty
            || !Statistics
                .Location.Spread.Summarize([
                    .. taken.Select(pair =>
                        (double)(100 * (pair.Delayed - pair.Baseline) / pair.Baseline)
                    ),
                ])
                .TryGet(out var found)
        )
        {
            return expected;
        }

        // Repeats of both results, half of the CV in variance each, are drawn again; what runs add may be the same in all pairs of a pilot, and stays.
        var cv = (double)(context.Analyte.BetweenRunCvPercent ?? 0);
        var own = Math.Max(
            0,
            (found.StandardDeviation * found.StandardDeviation)
                - (cv * cv / context.Protocol.Replicates)
        );
        return expected with
        {
            SpecimenSdPercent = Math.Sqrt(own),
            SdFrom = SdOrigin.Pilot,
            PilotPairs = taken.Length,
        };
    }
}
