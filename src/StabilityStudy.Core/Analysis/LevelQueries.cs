using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the decision levels of a sequence do not show: levels that no baseline reaches, and changes of side that a wide zone lets pass.</summary>
internal static class LevelQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind LevelNotReached = Kinds.Add("level-not-reached", QueryRank.Note, "a decision level lies outside the range of the baselines", "include specimens on both sides of it, or do not claim it");
    internal static readonly QueryKind WideZone = Kinds.Add("wide-zone", QueryRank.LaxCriterion, "the zone about a decision level, within which a change of side is not counted, is wider than imprecision explains", "give a narrower zone, or have the medical director give the reason", point: "A wide zone about a level.");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol) =>
        [.. NotReached(sequence, protocol), .. WideZones(sequence, protocol)];

    private static IEnumerable<DataQuery> WideZones(Sequence sequence, StudyProtocol protocol)
    {
        var analyte = protocol.Analytes.Single(item => item.Id == sequence.Analyte);
        return sequence
            .Cells.SelectMany(cell => cell.Criteria)
            .OfType<ReclassificationResult>()
            .DistinctBy(result => result.Criterion)
            .SelectMany(result =>
                result.Levels.Select(level =>
                    (
                        result.Criterion,
                        level.Level,
                        level.Zone,
                        Usual: UnclearZone.Usual(level.Level, analyte)
                    )
                )
            )
            .Where(item => item.Zone > item.Usual)
            .Select(item => new DataQuery(
                WideZone,
                new QuerySource("protocol.toml", null, "zone_in_unit"),
                item.Zone.ToString(CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"criterion \"{item.Criterion}\" counts no change of side of {item.Level} {analyte.Unit} within {item.Zone}; the stated imprecision explains {item.Usual}."
                ),
                "Give a narrower zone, or have the medical director give the reason."
            )
            {
                Scope = new(sequence.Analyte, sequence.Group, sequence.Storage, null),
            });
    }

    private static IEnumerable<DataQuery> NotReached(Sequence sequence, StudyProtocol protocol)
    {
        var baselines = sequence
            .Cells.SelectMany(cell => cell.Pairs)
            .Where(pair => pair.Status == PairStatus.Compared)
            .Select(pair => pair.Baseline?.Result)
            .OfType<MeasuredResult>()
            .Select(result => result.Value)
            .ToImmutableArray();
        if (baselines.IsEmpty)
        {
            yield break;
        }

        var missed = protocol
            .Analytes.Single(analyte => analyte.Id == sequence.Analyte)
            .DecisionLevels.Where(level => level > baselines.Max() || level < baselines.Min())
            .ToImmutableArray();
        if (!missed.IsEmpty)
        {
            yield return new(
                LevelNotReached,
                new(StudyFileNames.Usual.Results, null, null),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{sequence.Analyte} · {sequence.Group} · {sequence.Storage}: the baselines from {baselines.Min()} to {baselines.Max()} do not reach the decision level {string.Join(", ", missed.Select(level => level.ToString(CultureInfo.InvariantCulture)))}; the study says nothing about results there."
                ),
                "Add specimens on both sides of the level in the next study, where there are any."
            );
        }
    }
}
