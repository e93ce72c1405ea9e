using StabilityStudy.Core.Looks;

namespace StabilityStudy.Core.Analysis;

/// <summary>The data queries that only the finished pairs and conclusions show.</summary>
internal static class StudyQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind FewerSpecimensThanPlanned = Kinds.Add("fewer-specimens-than-planned", QueryRank.NotAsPlanned, "fewer specimens with a valid baseline were received than planned, and nothing says that collection has ended: nothing is concluded", "collect the others, or state ended_early in study.toml before anybody looks at changes");
    internal static readonly QueryKind CollectionEndedEarly = Kinds.Add("collection-ended-early", QueryRank.NotAsPlanned, "collection ended before the planned number was reached", "check that the reason does not depend on the results", point: "Collection ended early.");
    internal static readonly QueryKind MoreSpecimensThanPlanned = Kinds.Add("more-specimens-than-planned", QueryRank.NotAsPlanned, "more specimens were received than planned; the later ones are shown and not counted", "lock a larger number before more are collected");
    internal static readonly QueryKind ModifiedTest = Kinds.Add("modified-test", QueryRank.StatedAnyway, "a supported window goes beyond the manufacturer's limit", "follow the rules for modified tests before the window is used");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyRows rows, ImmutableArray<Sequence> sequences)
    {
        var inputs = rows.Inputs;
        return SideBySide.Of(
            () =>
                OfEach(
                    sequences,
                    sequence => sequence.Cells.SelectMany(cell => OfCell(cell, inputs.Protocol))
                ),
            () => sequences.SelectMany(NotAsPlanned),
            () => OfEach(sequences, sequence => SpreadQueries.Of(sequence, inputs.Protocol)),
            () => sequences.SelectMany(sequence => ScopeQueries.Of(sequence, inputs.Protocol)),
            () => sequences.SelectMany(sequence => SequenceQueries.Of(sequence, inputs.Protocol)),
            () => sequences.SelectMany(sequence => OfModifiedTest(sequence, inputs.Protocol)),
            () => sequences.SelectMany(sequence => LevelQueries.Of(sequence, inputs.Protocol)),
            () => LookQueries.Of(inputs, sequences),
            () => ExclusionQueries.Of(inputs, sequences),
            () => RecordQueries.Of(rows, inputs.Tubes),
            () => TubeQueries.Of(rows),
            () => DrawQueries.Of(inputs),
            () => TimeQueries.Of(rows),
            () => ResultQueries.Of(rows),
            () => ControlQueries.Of(rows)
        );
    }

    private static ImmutableArray<DataQuery> OfEach(
        ImmutableArray<Sequence> sequences,
        Func<Sequence, IEnumerable<DataQuery>> of
    ) =>
        SideBySide.Of([
            .. sequences.Select(sequence => (Func<IEnumerable<DataQuery>>)(() => of(sequence))),
        ]);

    private static IEnumerable<DataQuery> OfCell(Cell cell, StudyProtocol protocol) =>
        [
            .. PairQueries.OfAll(
                cell.Key,
                cell.Pairs,
                pair => "; " + ExcludedChange.Words(pair, cell.Key, protocol)
            ),
            .. CellQueries.Of(cell, protocol),
            .. ControlQueries.OfShift(cell, protocol),
            .. TubeQueries.MostlySpun(cell, protocol),
        ];

    private static IEnumerable<DataQuery> NotAsPlanned(Sequence sequence)
    {
        if (sequence.Cells is not [{ Disposition: var disposition }, ..])
        {
            yield break;
        }

        if (sequence.Collection.State == CollectionState.Incomplete)
        {
            yield return Number(FewerSpecimensThanPlanned);
        }
        else if (sequence.Collection.State == CollectionState.EndedEarly)
        {
            yield return Number(CollectionEndedEarly);
        }
        else if (sequence.Cells.Any(cell => cell.Disposition.Count(PairStatus.BeyondPlanned) > 0))
        {
            yield return Number(MoreSpecimensThanPlanned);
        }

        DataQuery Number(QueryKind kind) =>
            new(
                kind,
                DataFiles.SpecimensAt(null, null),
                disposition.Received.ToString(CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Group {sequence.Group}, storage {sequence.Storage}: {Counted.Of(disposition.Received, "specimen")} received, {sequence.Collection.Usable} with a valid baseline, {disposition.Planned} planned."
                )
            );
    }

    private static IEnumerable<DataQuery> OfModifiedTest(Sequence sequence, StudyProtocol protocol)
    {
        if (
            sequence
                .Windows.Where(item => item.ManufacturerLimit == ManufacturerStanding.Beyond)
                .MaxBy(item => item.Time)
            is not { } window
        )
        {
            yield break;
        }

        var limit = protocol.Analytes.Single(item => item.Id == sequence.Analyte).ManufacturerLimit;
        yield return new(
            ModifiedTest,
            new("protocol.toml", null, "manufacturer_limit"),
            limit is null ? "" : DurationText.Format(limit.Time),
            $"Modified test: {DurationText.FormatWindow(window.Time)} for {sequence.Analyte}, group {sequence.Group}, storage {sequence.Storage}, goes beyond the manufacturer's limit{(limit is null ? "" : " of " + DurationText.Format(limit.Time) + " (" + limit.Source + ")")}.",
            "Follow the rules for modified tests before this window is used."
        );
    }
}
