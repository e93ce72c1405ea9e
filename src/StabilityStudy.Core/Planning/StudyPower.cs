using StabilityStudy.Core.Analysis;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>
/// How often studies like this one would support a time point, were the true mean change this or that: what a conclusion is worth, and no conclusion itself. The change is supposed, never the
/// observed one: power at the observed change says no more than its interval does (Hoenig and Heisey, 2001, Am Stat 55:19–24, cited from memory).
/// </summary>
/// <param name="Studies">Simulated studies for each supposed change.</param>
/// <param name="Seed">Seed of the simulation.</param>
/// <param name="TimePoints">Every time point whose results are numbers.</param>
public sealed record StudyPower(int Studies, ulong Seed, ImmutableArray<CellPower> TimePoints)
{
    /// <summary>Most studies that can be asked for.</summary>
    public const int MostStudies = 100_000;

    /// <summary>The supposed changes: none, half of the smallest at which a criterion is no longer true, all of it.</summary>
    private static readonly ImmutableArray<double> s_shares = [0, 0.5, 1];

    /// <summary>Simulates studies of the size and spread that each time point had.</summary>
    /// <param name="analysis">The study.</param>
    /// <param name="studies">Studies for each supposed change, from 1 to <see cref="MostStudies"/>.</param>
    /// <param name="seed">Any number; the same gives the same figures.</param>
    /// <exception cref="ArgumentNullException">There is no analysis.</exception>
    /// <exception cref="ArgumentException">The number of studies is outside its range.</exception>
    public static StudyPower Of(StudyAnalysis analysis, int studies, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (studies is < 1 or > MostStudies)
        {
            throw new ArgumentException(
                $"There are from 1 to {MostStudies} studies.",
                nameof(studies)
            );
        }

        var protocol = analysis.Protocol;
        return new StudyPower(
            studies,
            seed,
            [
                .. from sequence in analysis.Sequences
                from cell in sequence.Cells
                let analyte = protocol.Analytes.Single(item => item.Id == cell.Key.Analyte)
                where !analyte.IsQualitative
                let context = new CellContext(
                    protocol,
                    analyte,
                    protocol.Groups.Single(item => item.Id == cell.Key.Group),
                    protocol.Storages.Single(item => item.Id == cell.Key.Storage),
                    cell.Key.TimePoint,
                    []
                )
                select new CellPower(cell.Key, Of(cell, context, studies, seed)),
            ]
        );
    }

    private static Estimate<TimePointPower> Of(
        Cell cell,
        CellContext context,
        int studies,
        ulong seed
    )
    {
        var supposed = SupposedFromResults.Of(cell.Pairs, context);
        if (!supposed.TryGet(out var spread))
        {
            return supposed.RefusedAs<TimePointPower>();
        }

        return SmallestUntrue.Percent(context, spread.Found) switch
        {
            null => Estimate.Refused<TimePointPower>(Refusal.NoLimit),
            0 => Estimate.Refused<TimePointPower>(Refusal.SpreadTooWide),
            { } boundary => Estimate.Of(Of(cell, spread, boundary, context, studies, seed)),
        };
    }

    private static TimePointPower Of(
        Cell cell,
        SupposedSpread spread,
        double boundary,
        CellContext context,
        int studies,
        ulong seed
    )
    {
        var direction =
            cell.Estimates.MeanPercent.TryGet(out var mean) && mean.Mean < 0 ? -boundary : boundary;
        double[] changes = [.. s_shares.Select(share => share == 0 ? 0 : share * direction)];
        ImmutableArray<CharacteristicPoint> Curve(SupposedResults supposed) =>
            CriterionSetCharacteristic.Curve(context, supposed, changes, studies, seed);
        var (found, atBound) = (Curve(spread.Found), Curve(spread.AtBound));
        return new TimePointPower(
            spread,
            boundary,
            [
                .. changes.Select(
                    (change, i) =>
                        new PowerAtChange(
                            s_shares[i],
                            change,
                            CriterionPower.Of(context, spread.Found, change),
                            found[i],
                            atBound[i]
                        )
                ),
            ]
        );
    }
}

/// <summary>What studies like this one would show at a time point.</summary>
/// <param name="Key">Analyte, group, storage and time point.</param>
/// <param name="Power">The figures, or why there are none.</param>
public sealed record CellPower(CellKey Key, Estimate<TimePointPower> Power);

/// <summary>How often studies would support a time point.</summary>
/// <param name="Supposed">How their results arise: days and runs as found, the spread as found and at its upper bounds.</param>
/// <param name="BoundaryPercent">Smallest mean change at which a criterion is no longer true, percent of the median baseline: there a support is wrong.</param>
/// <param name="Points">One point a supposed change.</param>
public sealed record TimePointPower(
    SupposedSpread Supposed,
    double BoundaryPercent,
    ImmutableArray<PowerAtChange> Points
);

/// <summary>How often studies would support a time point, were the mean change this.</summary>
/// <param name="ShareOfBoundary">The supposed change as a share of the boundary.</param>
/// <param name="MeanChangePercent">The supposed change, percent of the baseline, in the direction of the observed one.</param>
/// <param name="Alone">Exact chance of single criteria to be met, where there is a formula.</param>
/// <param name="Together">Simulated chance of all criteria together, the spread as found.</param>
/// <param name="AtSpreadBound">The same, were every spread as large as its upper bound.</param>
public sealed record PowerAtChange(
    double ShareOfBoundary,
    double MeanChangePercent,
    ImmutableArray<CriterionPower> Alone,
    CharacteristicPoint Together,
    CharacteristicPoint AtSpreadBound
);
