using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the instruments of a study say against one conclusion for all of them.</summary>
internal static class ScopeQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind RunOnTwoInstruments = Kinds.Add("run-on-two-instruments", QueryRank.Stop, "results of one analyte on two instruments have the same run code, so that the controls of one would vouch for the other", "give the runs of each instrument codes of their own");
    internal static readonly QueryKind SeveralInstruments = Kinds.Add("several-instruments", QueryRank.LaxConduct, "specimens were tested on several instruments, and the planned number holds for the group alone, so each instrument has only a part of it", "name the instruments in the protocol of the next study; the planned number then holds for each", point: "Several instruments share the planned number.");
    internal static readonly QueryKind InstrumentNotPlanned = Kinds.Add("instrument-not-planned", QueryRank.NotAsPlanned, "results come from an instrument that the protocol does not name among those of the study; its specimens are shown and not counted", "name it in the protocol of the next study");
    // csharpier-ignore-end

    /// <summary>Run codes that stand for runs on two instruments, where controls vouch for runs.</summary>
    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs.Protocol.Controls == ControlRule.EveryRun
        && inputs
            .Results.Select(row => row.Instrument)
            .Where(instrument => instrument.Length > 0)
            .Distinct()
            .Skip(1)
            .Any()
            ? OnTwoInstruments(inputs.Results)
            : [];

    private static IEnumerable<DataQuery> OnTwoInstruments(ImmutableArray<ResultRow> results) =>
        results
            .Where(row => row is { Run.Length: > 0, Instrument.Length: > 0 })
            .GroupBy(row => (row.Analyte, row.Run))
            .Select(rows => rows.DistinctBy(row => row.Instrument).ToImmutableArray())
            .Where(rows => rows.Length > 1)
            .Select(rows => new DataQuery(
                RunOnTwoInstruments,
                DataFiles.ResultsAt(rows[1].SourceRow, "run"),
                rows[1].Run,
                $"Run {rows[1].Run} of {rows[1].Analyte} is on {string.Join(" and ", rows.Select(row => Name(row.Instrument)))}; a run is on one, and its controls vouch for that one."
            ));

    /// <summary>A sequence over several instruments that was planned as one, or over others than planned.</summary>
    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        if (
            !sequence.Parts.IsEmpty
            && sequence.Collection.Planned
                == protocol.Groups.Single(group => group.Id == sequence.Group).Specimens
        )
        {
            yield return Query(
                SeveralInstruments,
                sequence,
                sequence.Parts.Select(part => part.Code),
                "while the planned number holds for the group; a window for all is stated only where each instrument supports it on its own specimens."
            );
        }

        var others = protocol.Instruments.IsEmpty
            ? []
            : sequence
                .Cells.SelectMany(cell => cell.Pairs)
                .Where(pair => pair.HasValidBaseline)
                .Select(pair => pair.Instrument)
                .Except(protocol.Instruments)
                .Order(StringComparer.Ordinal)
                .ToImmutableArray();
        if (!others.IsEmpty)
        {
            yield return Query(
                InstrumentNotPlanned,
                sequence,
                others,
                "which the protocol does not name; these specimens are not counted."
            );
        }
    }

    private static DataQuery Query(
        QueryKind kind,
        Sequence sequence,
        IEnumerable<string> instruments,
        string rest
    ) =>
        new(
            kind,
            new(StudyFileNames.Usual.Results, null, "instrument"),
            "",
            $"tested on {string.Join(" and ", instruments.Select(Name))}, {rest}"
        )
        {
            Scope = new(sequence.Analyte, sequence.Group, sequence.Storage, null),
        };

    private static string Name(string instrument) =>
        instrument.Length == 0 ? "an instrument that is not recorded" : instrument;
}
