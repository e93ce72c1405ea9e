namespace StabilityStudy.Core.Pairing;

/// <summary>
/// From rows to pairs, in a fixed order: replicates, failed tubes, eligibility, timing, baseline, pairing, measuring
/// interval, documented exclusions, planned number. Every specimen of the group gets exactly one record at every time point.
/// </summary>
internal static class PairAssembly
{
    /// <summary>The pairs of each time point of one analyte, group and storage, in ascending order of the time points.</summary>
    public static IEnumerable<(TimePoint TimePoint, ImmutableArray<PairRecord> Pairs)> Assemble(
        SpecimenIndex index,
        PairContext context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var found = Baselines(index, context);
        queries.AddRange(found.Queries);
        return Pairs(found, queries);
    }

    /// <summary>The draws of one analyte, group and storage, each with its baseline.</summary>
    public static FoundBaselines Baselines(SpecimenIndex index, PairContext context)
    {
        var queries = ImmutableArray.CreateBuilder<DataQuery>();
        var draws = index.Draws(context.Analyte.Id, context.Group.Id, context.Storage.Id);
        return new(
            context,
            draws,
            [.. draws.Select(draw => BaselineFinding.Of(draw, context, queries))],
            queries.DrainToImmutable()
        );
    }

    /// <summary>The pairs of each time point with baselines that were found, put together when they are asked for.</summary>
    public static IEnumerable<(TimePoint TimePoint, ImmutableArray<PairRecord> Pairs)> Pairs(
        FoundBaselines found,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var (context, draws, baselines, _) = found;
        var timePoints = context.TimePoints;
        var assigned = draws
            .Select(draw => AssignedTimes.Of(draw, timePoints, context.Protocol.DelaysPerSpecimen))
            .ToImmutableArray();
        foreach (var timePoint in timePoints)
        {
            var pairs = ImmutableArray.CreateBuilder<PairRecord>(draws.Length);
            for (var i = 0; i < draws.Length; i++)
            {
                pairs.Add(
                    assigned[i].Contains(timePoint)
                        ? Pair(draws[i], baselines[i], timePoint, context, queries)
                        : AssignedTimes.NotAssigned(draws[i], baselines[i])
                );
            }

            yield return (timePoint, pairs.MoveToImmutable());
        }
    }

    private static PairRecord Pair(
        Draw draw,
        BaselineFinding baseline,
        TimePoint timePoint,
        PairContext context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var chosen = Replicates.Choose(draw, new TestOccasion(timePoint), context, queries);
        var tube = chosen is null ? null : draw.Tube(chosen.Row.Tube);
        var decision = PairDecision.Of(draw, baseline, chosen, tube, timePoint, context);
        return new PairRecord(
            draw.Drawn.Collected,
            decision.Status,
            decision.Reason,
            baseline.Measurement,
            chosen is null || tube is null ? null : chosen.Measure(tube, context.Protocol),
            IsOutlier: false
        )
        {
            HasValidBaseline = baseline.Status == PairStatus.Compared,
            IsOfDelayedTube = decision.IsOfDelayedTube,
            IsExcludedKnowing = decision.IsExcludedKnowing,
        };
    }
}
