using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>Tubes and times that the rules let pass and that a reader should know of.</summary>
internal static class TubeQueries
{
    /// <summary>So many to the minute as planned are typed, not measured; and so many people are not collected in one minute.</summary>
    private const int FewestAsPlanned = 10;
    private const int MostInOneMinute = 4;

    /// <summary>Replicates of one run differ by less, but for one in some thousand.</summary>
    private const double MostCvsApart = 6;

    private const decimal MostTimes = 6;
    private const double LeastFrozen = 0.75;
    private static readonly TimeSpan s_summerTime = TimeSpan.FromHours(1);

    /// <summary>Common practice: ten to fifteen minutes at 1500 g.</summary>
    private static readonly TimeSpan s_shortestSpinning = TimeSpan.FromMinutes(5);

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        [
            .. HemolyzedBaselines(inputs),
            .. CollectedTogether(inputs),
            .. TestedAsPlanned(inputs),
            .. MoreDelaysThanPlanned(inputs),
            .. NotNative(inputs),
            .. NoTimeForSpinning(inputs),
            .. TestedBeforeReceipt(inputs),
            .. ReplicatesApart(inputs),
            .. OtherMagnitude(inputs),
            .. FrozenBriefly(inputs),
            .. OtherOffsets(inputs),
        ];

    private static IEnumerable<DataQuery> HemolyzedBaselines(StudyInputs inputs)
    {
        var baselines = inputs
            .Results.Where(row => row.Occasion.IsBaseline)
            .Select(row => (row.Specimen, row.Tube))
            .ToHashSet();
        var hemolyzed = inputs
            .Tubes.Where(tube =>
                tube.Hemolysis >= Hemolysis.Moderate
                && baselines.Contains((tube.Specimen, tube.Tube))
            )
            .ToImmutableArray();
        return hemolyzed.IsEmpty
            ? []
            :
            [
                Query(
                    "hemolysis-at-baseline",
                    DataFiles.SpecimensAt(hemolyzed.Min(tube => tube.SourceRow), "hemolysis"),
                    $"{Counted.Of(hemolyzed.Length, "baseline tube")} with moderate or gross hemolysis; only hemolysis that is new in a delayed tube counts against it.",
                    "Check that the laboratory would report such specimens."
                ),
            ];
    }

    private static IEnumerable<DataQuery> CollectedTogether(StudyInputs inputs)
    {
        var together = inputs
            .Tubes.DistinctBy(tube => (tube.Subject, tube.CollectedAt))
            .GroupBy(tube => tube.CollectedAt.ToUnixTimeSeconds() / 60)
            .Where(same => same.Count() > MostInOneMinute)
            .ToImmutableArray();
        return together.IsEmpty
            ? []
            :
            [
                Query(
                    "collected-in-one-minute",
                    DataFiles.SpecimensAt(
                        together.SelectMany(same => same).Min(tube => tube.SourceRow),
                        "collected_at"
                    ),
                    $"Up to {together.Max(same => same.Count())} subjects were collected in one and the same minute.",
                    "Check that the times are those of each collection, and that the subjects are different people."
                ),
            ];
    }

    private static IEnumerable<DataQuery> TestedAsPlanned(StudyInputs inputs)
    {
        var collected = inputs
            .Tubes.DistinctBy(tube => tube.Specimen)
            .ToDictionary(tube => tube.Specimen, tube => tube.CollectedAt);
        var delays = inputs
            .Results.Where(row =>
                row is { Occasion.IsBaseline: false, TestedAt: not null }
                && collected.ContainsKey(row.Specimen)
            )
            .ToImmutableArray();
        var exact = delays.Count(row =>
            row.TestedAt!.Value - collected[row.Specimen] == row.Occasion.TimePoint!.Value.Delay
        );
        return exact < FewestAsPlanned || 2 * exact < delays.Length
            ? []
            :
            [
                Query(
                    "times-as-planned",
                    DataFiles.ResultsAt(delays.Min(row => row.SourceRow), "tested_at"),
                    $"{exact} of {delays.Length} delayed results were tested at the planned delay to the minute.",
                    "Enter the times of the tests as the analyzer recorded them, not as they were planned."
                ),
            ];
    }

    private static IEnumerable<DataQuery> MoreDelaysThanPlanned(StudyInputs inputs)
    {
        if (inputs.Protocol.DelaysPerSpecimen is not { } planned)
        {
            return [];
        }

        var more = inputs
            .Results.Where(row => row.Occasion.TimePoint is not null)
            .GroupBy(row => (row.Specimen, row.Analyte))
            .Where(rows => rows.Select(row => row.Occasion).Distinct().Count() > planned)
            .Select(rows => rows.Key.Specimen)
            .Distinct()
            .Count();
        return more == 0
            ? []
            :
            [
                Query(
                    "more-delays-than-planned",
                    new("protocol.toml", null, "delays_per_specimen"),
                    $"{Counted.Of(more, "specimen")} tested at more than the planned {Counted.Of(planned, "delay")}; a result that is missing elsewhere may then be one that was taken away.",
                    "State the number of delays that was planned, and add the results of every tube."
                ),
            ];
    }

    /// <summary>Whole blood of such origin never supports a conclusion; other storages say so only here.</summary>
    private static IEnumerable<DataQuery> NotNative(StudyInputs inputs)
    {
        var other = inputs
            .Tubes.Where(tube => tube.Origin is Origin.Pool or Origin.Spiked)
            .ToImmutableArray();
        return other.IsEmpty
            ? []
            :
            [
                Query(
                    "origin-not-native",
                    DataFiles.SpecimensAt(other.Min(tube => tube.SourceRow), "origin"),
                    $"{Counted.Of(other.Select(tube => tube.Specimen).Distinct().Count(), "specimen")} of pooled or spiked plasma; what holds for it need not hold for patients' specimens.",
                    "Repeat the study with patients' specimens, or limit the conclusion to such plasma."
                ),
            ];
    }

    private static IEnumerable<DataQuery> NoTimeForSpinning(StudyInputs inputs)
    {
        var spun = inputs
            .Tubes.Where(tube => tube.SpunAt is not null)
            .ToDictionary(tube => (tube.Specimen, tube.Tube), tube => tube.SpunAt!.Value);
        var tests = inputs
            .Results.Where(row =>
                row.TestedAt is not null && spun.ContainsKey((row.Specimen, row.Tube))
            )
            .ToImmutableArray();
        var hasty = tests
            .Where(row => row.TestedAt - spun[(row.Specimen, row.Tube)] < s_shortestSpinning)
            .ToImmutableArray();
        return hasty.Length < FewestAsPlanned || 10 * hasty.Length < tests.Length
            ? []
            :
            [
                Query(
                    "no-time-for-spinning",
                    DataFiles.SpecimensAt(null, "spun_at"),
                    $"{hasty.Length} of {tests.Length} results were tested less than {s_shortestSpinning.TotalMinutes:0} minutes after the tube was put into the centrifuge, too soon to spin it.",
                    "Enter the times at which tubes were spun, not those of their tests."
                ),
            ];
    }

    private static IEnumerable<DataQuery> TestedBeforeReceipt(StudyInputs inputs)
    {
        var received = inputs
            .Tubes.Where(tube => tube.ReceivedAt is not null)
            .ToDictionary(tube => (tube.Specimen, tube.Tube), tube => tube.ReceivedAt!.Value);
        var early = inputs
            .Results.Where(row =>
                received.TryGetValue((row.Specimen, row.Tube), out var at) && row.TestedAt < at
            )
            .ToImmutableArray();
        return early.IsEmpty
            ? []
            :
            [
                Query(
                    "tested-before-receipt",
                    DataFiles.ResultsAt(early.Min(row => row.SourceRow), "tested_at"),
                    $"{Counted.Of(early.Length, "result")} tested before the tube was received.",
                    "Correct the time that is wrong."
                ),
            ];
    }

    /// <summary>Replicates far apart have a mean that stands for neither.</summary>
    private static IEnumerable<DataQuery> ReplicatesApart(StudyInputs inputs)
    {
        var cvs = inputs
            .Protocol.Analytes.Where(analyte => analyte.BetweenRunCvPercent is > 0)
            .ToDictionary(analyte => analyte.Id, analyte => (double)analyte.BetweenRunCvPercent!);
        var apart = inputs
            .Results.Where(row => row.Result is MeasuredResult && cvs.ContainsKey(row.Analyte))
            .GroupBy(row => (row.Specimen, row.Tube, row.Analyte, row.Occasion))
            .Where(rows => SpreadPercent(rows) > MostCvsApart * cvs[rows.Key.Analyte])
            .ToImmutableArray();
        return apart.IsEmpty
            ? []
            :
            [
                Query(
                    "replicates-disagree",
                    DataFiles.ResultsAt(
                        apart.SelectMany(rows => rows).Min(row => row.SourceRow),
                        "result"
                    ),
                    $"{Counted.Of(apart.Length, "tube")} with results of one time that differ by more than {MostCvsApart:0} times the between-run CV; specimen {apart[0].Key.Specimen} at {apart[0].Key.Occasion} is the first.",
                    "Look for an error of transcription or measurement; the mean of such results stands for neither."
                ),
            ];
    }

    private static double SpreadPercent(IEnumerable<ResultRow> rows)
    {
        var values = rows.Select(row => (double)((MeasuredResult)row.Result).Value).ToArray();
        return values.Average() == 0 ? 0 : 100 * (values.Max() - values.Min()) / values.Average();
    }

    /// <summary>A storage in the freezer that was not spent there.</summary>
    private static IEnumerable<DataQuery> FrozenBriefly(StudyInputs inputs)
    {
        var tubes = inputs
            .Tubes.Where(tube => tube is { FrozenAt: not null, ThawedAt: not null })
            .ToDictionary(tube => (tube.Specimen, tube.Tube));
        var brief = inputs
            .Results.Where(row =>
                row is { Occasion.TimePoint: not null, TestedAt: not null }
                && tubes.TryGetValue((row.Specimen, row.Tube), out var tube)
                && tube.ThawedAt - tube.FrozenAt < LeastFrozen * row.Occasion.TimePoint.Value.Delay
            )
            .ToImmutableArray();
        return brief.IsEmpty
            ? []
            :
            [
                Query(
                    "frozen-briefly",
                    DataFiles.ResultsAt(brief.Min(row => row.SourceRow), "time_point"),
                    $"{Counted.Of(brief.Length, "result")} of tubes that were frozen for less than three quarters of their delay; they say little about frozen plasma.",
                    "Correct frozen_at and thawed_at, or study the other storage as one of its own."
                ),
            ];
    }

    /// <summary>Times of one specimen with different offsets, but for the change to or from summer time, make delays shorter or longer than they were.</summary>
    private static IEnumerable<DataQuery> OtherOffsets(StudyInputs inputs)
    {
        var tubes = inputs.Tubes.ToLookup(tube => tube.Specimen, tube => tube.CollectedAt);
        var differing = inputs
            .Results.Where(row => row.TestedAt is not null)
            .GroupBy(row => row.Specimen)
            .Where(rows =>
            {
                var offsets = rows.Select(row => row.TestedAt!.Value.Offset)
                    .Concat(tubes[rows.Key].Select(at => at.Offset))
                    .ToArray();
                return offsets.Max() - offsets.Min() > s_summerTime;
            })
            .ToImmutableArray();
        return differing.IsEmpty
            ? []
            :
            [
                Query(
                    "offsets-differ",
                    DataFiles.ResultsAt(
                        differing.SelectMany(rows => rows).Min(row => row.SourceRow),
                        "tested_at"
                    ),
                    $"{Counted.Of(differing.Length, "specimen")} with times whose offsets from UTC differ by more than an hour; their delays are only as right as these offsets.",
                    "Correct the offsets, or name one time zone in study.toml and write local times."
                ),
            ];
    }

    /// <summary>A lost or added digit.</summary>
    private static IEnumerable<DataQuery> OtherMagnitude(StudyInputs inputs)
    {
        var far = inputs
            .Results.Where(row => row.Result is MeasuredResult { Value: > 0 })
            .GroupBy(row => (row.Specimen, row.Analyte))
            .Where(rows =>
            {
                var values = rows.Select(row => ((MeasuredResult)row.Result).Value).ToArray();
                return values.Max() >= MostTimes * values.Min();
            })
            .ToImmutableArray();
        return far.IsEmpty
            ? []
            :
            [
                Query(
                    "result-of-other-magnitude",
                    DataFiles.ResultsAt(
                        far.SelectMany(rows => rows).Min(row => row.SourceRow),
                        "result"
                    ),
                    $"{Counted.Of(far.Length, "specimen")} with {far[0].Key.Analyte} results of which one is {MostTimes:0} times another or more; specimen {far[0].Key.Specimen} is the first.",
                    "Look for a lost decimal point or another unit."
                ),
            ];
    }

    /// <summary>Blood that waited mostly after it was spun says little about blood that waits unspun.</summary>
    public static IEnumerable<DataQuery> MostlySpun(Cell cell, StudyProtocol protocol)
    {
        const double leastShare = 0.75;
        var shares = cell
            .Pairs.Where(pair =>
                pair
                    is {
                        Status: PairStatus.Compared,
                        TimeBeforeSpinning: not null,
                        TimeAfterSpinning: not null
                    }
            )
            .Select(pair =>
                pair.TimeBeforeSpinning!.Value
                / (pair.TimeBeforeSpinning.Value + pair.TimeAfterSpinning!.Value)
            )
            .Order()
            .ToImmutableArray();
        var isBlood = protocol.Storages.Any(storage =>
            storage.Id == cell.Key.Storage && storage.State == StorageState.WholeBlood
        );
        return !isBlood || shares.IsEmpty || shares[shares.Length / 2] >= leastShare
            ? []
            :
            [
                Query(
                    "waited-mostly-spun",
                    new("protocol.toml", null, "spin_to_test"),
                    $"{cell.Key}: half of the delayed tubes waited unspun for at most {100 * shares[shares.Length / 2]:0} % of their delay; the study says little about whole blood that waits so long.",
                    "Spin delayed tubes shortly before their test, or study plasma as a storage of its own."
                ),
            ];
    }

    private static DataQuery Query(
        string code,
        QuerySource source,
        FormattableString message,
        string action
    ) =>
        new(
            code,
            Severity.Attention,
            source,
            "",
            message.ToString(CultureInfo.InvariantCulture),
            action
        );
}
