using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>
/// From rows to pairs, in a fixed order: replicates, eligibility, timing, baseline, pairing, failed tubes, measuring
/// interval, documented exclusions. Every specimen of the group gets exactly one record at every time point.
/// </summary>
internal static class PairAssembly
{
    /// <summary>The pairs of each time point of one analyte, group and storage, in the order of the protocol's time points.</summary>
    public static ImmutableArray<(TimePoint TimePoint, ImmutableArray<PairRecord> Pairs)> Assemble(
        StudyInputs inputs,
        Analyte analyte,
        PatientGroup group,
        Storage storage,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var draws = Draw.Of(inputs, analyte.Id, group.Id, storage.Id);
        var firstDraws = draws
            .GroupBy(draw => draw.First.Subject)
            .Select(same =>
                same.OrderBy(draw => draw.First.CollectedAt)
                    .ThenBy(draw => draw.Specimen, StringComparer.Ordinal)
                    .First()
                    .Specimen
            )
            .ToImmutableHashSet();
        var context = new Context(inputs.Protocol, inputs.Facts, analyte, group, storage);
        var baselines = draws.ToImmutableDictionary(
            draw => draw.Specimen,
            draw => FindBaseline(draw, context, firstDraws.Contains(draw.Specimen), queries)
        );
        return
        [
            .. inputs.Protocol.TimePoints.Select(timePoint =>
                (
                    timePoint,
                    draws
                        .Select(draw =>
                            Pair(draw, baselines[draw.Specimen], timePoint, context, queries)
                        )
                        .ToImmutableArray()
                )
            ),
        ];
    }

    private static BaselineFinding FindBaseline(
        Draw draw,
        Context context,
        bool isFirstOfSubject,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var row = Replicates.Choose(
            draw,
            new TestOccasion(null),
            context.Protocol.Replicates,
            queries
        );
        var tube = row is null ? null : draw.Tube(row.Tube);
        if (row is null || tube is null)
        {
            return new(null, null, PairStatus.BaselineInvalid, "no baseline result");
        }

        var measurement = Measure(tube, row, context.Analyte);
        var unusable = isFirstOfSubject
            ? EligibilityRules.BaselineProblem(tube, context.Storage, context.Protocol.Eligibility)
            : $"subject {tube.Subject} is already in this group with an earlier specimen";
        if (unusable is not null)
        {
            return new(tube, measurement, PairStatus.Ineligible, unusable);
        }

        var invalid =
            TimingRules.BaselineProblem(tube, row, context.Protocol, context.Group)
            ?? (row.Flag.Length > 0 ? "error flag " + row.Flag + " on the baseline" : null)
            ?? (row.Result is MissingResult ? "no baseline result" : null);
        return new(
            tube,
            measurement,
            invalid is null ? PairStatus.Compared : PairStatus.BaselineInvalid,
            invalid ?? ""
        );
    }

    private static PairRecord Pair(
        Draw draw,
        BaselineFinding baseline,
        TimePoint timePoint,
        Context context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var row = Replicates.Choose(
            draw,
            new TestOccasion(timePoint),
            context.Protocol.Replicates,
            queries
        );
        var tube = row is null ? null : draw.Tube(row.Tube);
        var delayed = row is null || tube is null ? null : Measure(tube, row, context.Analyte);
        var (status, reason) = Decide(draw, baseline, row, tube, timePoint, context);
        if (
            status is PairStatus.Compared
            && (IsCensored(baseline.Measurement) || IsCensored(delayed))
        )
        {
            (status, reason) = (PairStatus.BeyondInterval, "beyond the measuring interval");
        }

        var exclusion = context.Facts.Exclusions.FirstOrDefault(item =>
            item.Specimen == draw.Specimen
            && (item.Analyte is null || item.Analyte == context.Analyte.Id)
            && (item.TimePoint is null || item.TimePoint == timePoint)
        );
        if (
            exclusion is not null
            && status is PairStatus.Compared or PairStatus.BeyondInterval or PairStatus.Failed
        )
        {
            var was =
                status == PairStatus.Failed ? $" (the delayed tube had failed: {reason})" : "";
            (status, reason) = (
                PairStatus.Excluded,
                FormattableString.Invariant(
                    $"{exclusion.Reason} ({exclusion.By}, {exclusion.On:yyyy-MM-dd}){was}"
                )
            );
        }

        return new PairRecord(
            draw.Specimen,
            draw.First.Subject,
            DateOnly.FromDateTime(draw.First.CollectedAt.DateTime),
            status,
            reason,
            baseline.Measurement,
            delayed,
            IsOutlier: false
        );
    }

    private static (PairStatus Status, string Reason) Decide(
        Draw draw,
        BaselineFinding baseline,
        ResultRow? row,
        TubeRow? tube,
        TimePoint timePoint,
        Context context
    )
    {
        if (baseline.Status == PairStatus.Ineligible)
        {
            return (baseline.Status, baseline.Reason);
        }

        if (
            tube is not null
            && EligibilityRules.Problem(tube, context.Storage, context.Protocol.Eligibility)
                is { } unusable
        )
        {
            return (PairStatus.Ineligible, unusable);
        }

        if (row is not null && tube is not null)
        {
            var untimely =
                TimingRules.TubePlanProblem(draw, row, context.Protocol)
                ?? (
                    row.TestedAt is { } testedAt
                        ? TimingRules.DelayedProblem(
                            tube,
                            testedAt,
                            timePoint,
                            context.Protocol.Tolerance,
                            context.Storage
                        )
                        : null
                );
            if (untimely is not null)
            {
                return (PairStatus.OutsideTiming, untimely);
            }
        }

        if (baseline.Status != PairStatus.Compared || baseline.Tube is null)
        {
            return (PairStatus.BaselineInvalid, baseline.Reason);
        }

        if (row is null || tube is null)
        {
            return (PairStatus.NoDelayedResult, "no row in results.csv");
        }

        return DelayedFailure.Failure(tube, baseline.Tube, row) is { } failure
                ? (PairStatus.Failed, failure)
            : DelayedFailure.NotTested(row) is { } notTested
                ? (PairStatus.NoDelayedResult, notTested)
            : row.TestedAt is null
                ? (PairStatus.OutsideTiming, "time of the delayed test not recorded")
            : (PairStatus.Compared, "");
    }

    private static Measurement Measure(TubeRow tube, ResultRow row, Analyte analyte) =>
        new(
            row.Tube,
            MeasuringRange.Apply(row.Result, analyte.MeasuringInterval),
            row.TestedAt,
            row.TestedAt - tube.CollectedAt,
            row.Run,
            row.Instrument,
            row.Lot,
            row.Calibration,
            row.SourceRow
        );

    private static bool IsCensored(Measurement? measurement) =>
        measurement?.Result is CensoredResult;

    private sealed record Context(
        StudyProtocol Protocol,
        StudyFacts Facts,
        Analyte Analyte,
        PatientGroup Group,
        Storage Storage
    );

    private sealed record BaselineFinding(
        TubeRow? Tube,
        Measurement? Measurement,
        PairStatus Status,
        string Reason
    );
}
