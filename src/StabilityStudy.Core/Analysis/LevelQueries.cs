using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Decision levels that no baseline of a group reaches: the conclusion says nothing about results there.</summary>
internal static class LevelQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind LevelNotReached = Kinds.Add("level-not-reached", QueryRank.Note, "a decision level lies outside the range of the baselines", "include specimens on both sides of it, or do not claim it");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
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
