using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Looks;

/// <summary>Earlier looks at other data, and what differs since.</summary>
internal static class LookQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind DataLookedAt = Kinds.Add("data-looked-at", QueryRank.StatedAnyway, "other data of this study were looked at before; page 1 names each look", "read what was added, changed or left out since");
    internal static readonly QueryKind AddedAfterALook = Kinds.Add("specimens-added-after-look", QueryRank.Exclusion, "specimens were added after the data had been looked at; they are shown and not counted", "conclude from a new study; an extension has to be planned before data, with planned_looks", point: "Specimens were added after a look.");
    internal static readonly QueryKind ChangedAfterLook = Kinds.Add("pairs-changed-after-look", QueryRank.Exclusion, "results were changed or left out after the data had been looked at", "show for each that the reason does not depend on the result", point: "Results were changed after a look.");
    internal static readonly QueryKind EndContradicted = Kinds.Add("ended-early-contradicted", QueryRank.NotAsPlanned, "a specimen was collected after the day on which collection is said to have ended; the statement does not count", "correct the day, or the time of collection");
    // csharpier-ignore-end

    /// <summary>Specimens collected after the day of the stated end.</summary>
    public static IEnumerable<DataQuery> OfEnd(StudyInputs inputs)
    {
        if (inputs.Facts.EndedEarly is { } end && CollectionStanding.IsContradicted(end, inputs))
        {
            yield return new(
                EndContradicted,
                new QuerySource("study.toml", end.Line, "ended_early"),
                FormattableString.Invariant($"{end.On:yyyy-MM-dd}"),
                "Specimens were collected after the day on which collection is said to have ended, so the statement does not count."
            );
        }
    }

    /// <summary>The queries that looks give rise to.</summary>
    public static IEnumerable<DataQuery> Of(StudyInputs inputs, ImmutableArray<Sequence> sequences)
    {
        return
        [
            .. inputs.Looks.Select(look =>
                Query(
                    DataLookedAt,
                    FormattableString.Invariant(
                        $"The data were looked at on {look.At:yyyy-MM-dd HH:mm zzz} ({look.Action}), by that computer's clock; since then they are other data."
                    )
                )
            ),
            .. sequences.SelectMany(Added),
            .. sequences
                .SelectMany(sequence => sequence.Cells)
                .SelectMany(cell => inputs.Looks.SelectMany(look => Changed(cell, look))),
        ];
    }

    private static IEnumerable<DataQuery> Added(Sequence sequence)
    {
        var added = sequence
            .Cells.SelectMany(cell => cell.Pairs)
            .Where(pair => pair.Status == PairStatus.AddedAfterLook)
            .Select(pair => pair.Specimen)
            .Distinct()
            .ToImmutableArray();
        if (!added.IsEmpty)
        {
            yield return Query(
                AddedAfterALook,
                FormattableString.Invariant(
                    $"{sequence.Analyte}, group {sequence.Group}, storage {sequence.Storage}: {Counted.Of(added.Length, "specimen")} added after the data had been looked at: {ControlDoubts.Names(added)}; shown, not counted."
                )
            );
        }
    }

    private static IEnumerable<DataQuery> Changed(Cell cell, EarlierLook look)
    {
        if (look.Of(cell.Key) is not { } seen)
        {
            yield break;
        }

        var now = cell.Pairs.ToDictionary(
            pair => pair.Specimen,
            pair => LookedAtPair.Of(pair).Fingerprint
        );
        string[] parts =
        [
            .. Part(
                "changed",
                pair =>
                    pair.Fingerprint is not null
                    && Now(pair) is { } other
                    && other != pair.Fingerprint
            ),
            .. Part("left out since", pair => pair.Fingerprint is not null && Now(pair) is null),
            .. Part("counted since", pair => pair.Fingerprint is null && Now(pair) is not null),
        ];
        if (parts.Length > 0)
        {
            yield return Query(
                ChangedAfterLook,
                FormattableString.Invariant(
                    $"{cell.Key.Analyte}, group {cell.Key.Group}, storage {cell.Key.Storage}, {cell.Key.TimePoint}, against the look of {look.At:yyyy-MM-dd}: {string.Join("; ", parts)}. This time point alone was {Words(seen.Conclusion)} then and is {Words(cell.OwnConclusion)} now."
                )
            );
        }

        uint? Now(LookedAtPair pair) => now.GetValueOrDefault(pair.Specimen);

        IEnumerable<string> Part(string what, Func<LookedAtPair, bool> applies)
        {
            var codes = seen.Pairs.Where(applies).Select(pair => pair.Specimen).ToImmutableArray();
            return codes.IsEmpty ? [] : [$"{what} {ControlDoubts.Names(codes)}"];
        }
    }

    private static string Words(Conclusion conclusion) =>
        conclusion switch
        {
            Conclusion.Supported => "supported",
            Conclusion.NotSupported => "not supported",
            Conclusion.Inconclusive => "inconclusive",
            Conclusion.NotAssessed => "not assessed",
            Conclusion.NotReached => "not reached",
        };

    private static DataQuery Query(QueryKind kind, string message) =>
        new(kind, new QuerySource(StudyFileNames.Looks, null, null), "", message);
}
