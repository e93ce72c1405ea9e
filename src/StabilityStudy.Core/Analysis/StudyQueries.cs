namespace StabilityStudy.Core.Analysis;

/// <summary>The data queries that only the finished pairs and conclusions show.</summary>
internal static class StudyQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind FewerSpecimensThanPlanned = Kinds.Add("fewer-specimens-than-planned", QueryRank.NotAsPlanned, "fewer specimens were received than planned", "say in a deviation why collection ended early");
    internal static readonly QueryKind MoreSpecimensThanPlanned = Kinds.Add("more-specimens-than-planned", QueryRank.NotAsPlanned, "more specimens were received than planned", "say in a deviation when and why more were collected");
    internal static readonly QueryKind ModifiedTest = Kinds.Add("modified-test", QueryRank.StatedAnyway, "a supported window goes beyond the manufacturer's limit", "follow the rules for modified tests before the window is used");
    internal static readonly QueryKind ExtendedAsPlanned = Kinds.Add("extended-as-planned", QueryRank.NotAsPlanned, "more specimens were received than planned for the first of two looks", "check that the extension was begun because the first look was inconclusive");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(
        StudyInputs inputs,
        ImmutableArray<Sequence> sequences
    ) =>
        [
            .. sequences
                .SelectMany(sequence => sequence.Cells)
                .SelectMany(cell =>
                    (IEnumerable<DataQuery>)
                        [
                            .. PairQueries.OfAll(
                                cell.Key,
                                cell.Pairs,
                                pair => "; " + ExcludedChange.Words(pair, cell.Key, inputs.Protocol)
                            ),
                            .. CellQueries.Of(cell, inputs.Protocol),
                            .. ControlQueries.OfShift(cell, inputs.Protocol),
                            .. TubeQueries.MostlySpun(cell, inputs.Protocol),
                        ]
                ),
            .. sequences.SelectMany(sequence => NotAsPlanned(sequence, inputs.Protocol)),
            .. sequences.SelectMany(sequence => SequenceQueries.Of(sequence, inputs.Protocol)),
            .. sequences.SelectMany(sequence => OfModifiedTest(sequence, inputs.Protocol)),
            .. sequences.SelectMany(sequence => LevelQueries.Of(sequence, inputs.Protocol)),
            .. ExclusionQueries.Of(inputs, sequences),
            .. RecordQueries.Of(inputs),
            .. TubeQueries.Of(inputs),
            .. TimeQueries.Of(inputs),
            .. ResultQueries.Of(inputs),
            .. ControlQueries.Of(inputs),
        ];

    private static IEnumerable<DataQuery> NotAsPlanned(Sequence sequence, StudyProtocol protocol)
    {
        if (sequence.Cells is not [{ Disposition: var disposition }, ..])
        {
            yield break;
        }

        if (disposition.Received < disposition.Planned)
        {
            yield return Number(
                FewerSpecimensThanPlanned,
                "Say in a deviation why collection ended early; stopping when the figures look good is not allowed."
            );
        }
        else if (disposition.Received > disposition.Planned && protocol.PlannedLooks == 1)
        {
            yield return Number(
                MoreSpecimensThanPlanned,
                "Say in a deviation when and why more were collected; going on until the figures look good is not allowed."
            );
        }

        if (disposition.Received > disposition.Planned && protocol.PlannedLooks > 1)
        {
            yield return Number(
                ExtendedAsPlanned,
                "Check that the extension was begun because the first look was inconclusive, and that each look is reported."
            );
        }

        DataQuery Number(QueryKind kind, string? action = null) =>
            new(
                kind,
                DataFiles.SpecimensAt(null, null),
                disposition.Received.ToString(CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Group {sequence.Group}, storage {sequence.Storage}: {Counted.Of(disposition.Received, "specimen")} received, {disposition.Planned} planned."
                ),
                action
            );
    }

    private static IEnumerable<DataQuery> OfModifiedTest(Sequence sequence, StudyProtocol protocol)
    {
        if (sequence.Window is not { ManufacturerLimit: ManufacturerStanding.Beyond } window)
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
