namespace StabilityStudy.Core.Analysis;

/// <summary>How specimens were drawn and brought to the laboratory, where specimens.csv records it: what can change a result before waiting begins.</summary>
public static class DrawQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind DiscardTubeNotDrawn = Kinds.Add("discard-tube-not-drawn", QueryRank.Specimen, "no discard tube was filled before a draw with a winged set, whose air makes the first tube short, or before one where the protocol wants it", "fill a discard tube, of citrate or plain, and check the fill of the tubes");
    internal static readonly QueryKind DiscardTubeOfOtherAdditive = Kinds.Add("discard-tube-of-other-additive", QueryRank.Specimen, "a discard tube had another additive than citrate, which can be carried over", "use a citrate tube or a plain one; draw the specimens again");
    internal static readonly QueryKind DrawnAfterOtherTube = Kinds.Add("drawn-after-other-tube", QueryRank.Specimen, "tubes were drawn after a tube of another kind, whose additive can be carried over, or after more than the protocol allows", "draw citrate tubes first, or after a blood culture");
    internal static readonly QueryKind DeviceNotPlanned = Kinds.Add("device-not-planned", QueryRank.NotAsPlanned, "specimens were drawn with a device that the protocol does not name", "use the devices of the protocol, or correct the row");
    internal static readonly QueryKind InversionsNotAsPlanned = Kinds.Add("inversions-not-as-planned", QueryRank.NotAsPlanned, "tubes were inverted less or more often than planned: too seldom leaves clots, too often breaks cells and activates platelets", "invert each tube gently as often as the protocol says, or correct the row");
    internal static readonly QueryKind TransportedCold = Kinds.Add("transported-cold", QueryRank.Specimen, "tubes came to the laboratory refrigerated or on ice: cold takes von Willebrand factor and factor VIII and can activate factor VII", "bring unspun citrate tubes at room temperature");
    internal static readonly QueryKind NotCitrated = Kinds.Add("not-citrated", QueryRank.Specimen, "tubes hold serum or another anticoagulant; they do not count", "test citrated plasma, never serum; find out how the tubes came into the study");
    /// <summary>The protocol says how specimens are drawn, and specimens.csv does not always record it.</summary>
    public static readonly QueryKind DrawNotRecorded = Kinds.Add("draw-not-recorded", QueryRank.NotRecorded, "the protocol says how specimens are drawn, and whether they were is not recorded", "record it for each tube");
    // csharpier-ignore-end

    internal static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        [
            .. WithoutDiscardTube(inputs),
            .. Found(
                inputs,
                DiscardTubeOfOtherAdditive,
                "discard_tube",
                tube => tube.DiscardTube == DiscardTube.OtherAdditive,
                "after a discard tube with another additive than citrate, which can be carried over"
            ),
            .. Found(
                inputs,
                DrawnAfterOtherTube,
                "drawn_after",
                tube =>
                    tube.DrawnAfter == DrawnBefore.OtherTube
                    || (
                        tube.DrawnAfter == DrawnBefore.BloodCulture
                        && inputs.Protocol.Draw is { Order: DrawOrder.First }
                    ),
                "after other tubes than the protocol and common practice allow; their additive can be carried over"
            ),
            .. Found(
                inputs,
                DeviceNotPlanned,
                "device",
                tube =>
                    tube.Device.Length > 0
                    && inputs.Protocol.Draw is { Devices: { IsEmpty: false } devices }
                    && !devices.Contains(tube.Device),
                "with a device that the protocol does not name"
            ),
            .. WrongInversions(inputs),
            .. Cold(inputs),
            .. OfTubes(
                inputs,
                NotCitrated,
                "material",
                tube =>
                    tube.Material is SpecimenMaterial.Serum or SpecimenMaterial.OtherAnticoagulant,
                count => $"{count} not of citrated blood or plasma; they do not count."
            ),
            .. NotRecorded(inputs),
        ];

    private static IEnumerable<DataQuery> WithoutDiscardTube(StudyInputs inputs)
    {
        var rule = inputs.Protocol.Draw?.DiscardTube;
        return Found(
            inputs,
            DiscardTubeNotDrawn,
            "discard_tube",
            tube =>
                tube.DiscardTube == DiscardTube.None
                && (DrawRules.IsWingedSet(tube.Device) || rule == DiscardTubeRule.Always),
            rule == DiscardTubeRule.Always
                ? "without the discard tube that the protocol wants first"
                : "with a winged set and no discard tube first: the air in its tubing makes the first tube short"
        );
    }

    private static IEnumerable<DataQuery> WrongInversions(StudyInputs inputs) =>
        inputs.Protocol.Draw is not { } rules
            ? []
            : OfTubes(
                inputs,
                InversionsNotAsPlanned,
                "inversions",
                tube =>
                    tube.Inversions < rules.FewestInversions
                    || tube.Inversions > rules.MostInversions,
                count =>
                    $"{count} inverted less than {rules.FewestInversions} or more than {rules.MostInversions} times."
            );

    /// <summary>Cold is what is studied where the tube waits in it unspun; ice never is.</summary>
    private static IEnumerable<DataQuery> Cold(StudyInputs inputs)
    {
        const decimal room = 15;
        var cold = inputs
            .Protocol.Storages.Where(storage =>
                storage.State == StorageState.WholeBlood && storage.HighestCelsius < room
            )
            .Select(storage => storage.Id)
            .ToHashSet();
        return OfTubes(
            inputs,
            TransportedCold,
            "transport",
            tube =>
                tube.Transport == TransportState.OnIce
                || (tube.Transport == TransportState.Refrigerated && !cold.Contains(tube.Storage)),
            count =>
                $"{count} came to the laboratory refrigerated or on ice; cold takes von Willebrand factor and factor VIII and can activate factor VII."
        );
    }

    private static IEnumerable<DataQuery> NotRecorded(StudyInputs inputs)
    {
        if (inputs.Protocol.Draw is not { } rules)
        {
            return [];
        }

        (string Column, Func<TubeRow, bool> IsMissing)[] columns =
        [
            ("device", tube => tube.Device.Length == 0),
            (
                "discard_tube",
                tube =>
                    tube.DiscardTube == DiscardTube.NotRecorded
                    && rules.DiscardTube != DiscardTubeRule.Never
            ),
            ("drawn_after", tube => tube.DrawnAfter == DrawnBefore.NotRecorded),
            (
                "draw_position",
                tube => tube.DrawPosition is null && inputs.Protocol.DrawsATubeForEachTest
            ),
            ("inversions", tube => tube.Inversions is null),
            ("transport", tube => tube.Transport == TransportState.NotRecorded),
            ("material", tube => tube.Material == SpecimenMaterial.NotRecorded),
        ];
        var missing = columns
            .Where(column => inputs.Tubes.Any(column.IsMissing))
            .ToImmutableArray();
        return missing.IsEmpty
            ? []
            : OfTubes(
                inputs,
                DrawNotRecorded,
                missing[0].Column,
                tube => missing.Any(column => column.IsMissing(tube)),
                count =>
                    $"The protocol says how specimens are drawn; not recorded for {count}: {string.Join(", ", missing.Select(column => column.Column))}."
            );
    }

    private static IEnumerable<DataQuery> Found(
        StudyInputs inputs,
        QueryKind kind,
        string column,
        Func<TubeRow, bool> isFound,
        string how
    ) => OfTubes(inputs, kind, column, isFound, count => $"{count} drawn {how}.");

    private static IEnumerable<DataQuery> OfTubes(
        StudyInputs inputs,
        QueryKind kind,
        string column,
        Func<TubeRow, bool> isFound,
        Func<string, FormattableString> message
    )
    {
        var found = inputs.Tubes.Where(isFound).ToImmutableArray();
        return FoundRows.OfTubes(
            kind,
            column,
            found,
            () => message(Counted.Of(found.Length, "tube"))
        );
    }
}
