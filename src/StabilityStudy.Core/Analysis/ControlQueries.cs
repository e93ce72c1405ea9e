using System.Runtime.InteropServices;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Doubts;

namespace StabilityStudy.Core.Analysis;

/// <summary>Runs that no control vouches for, and what bridging plasma says about the runs.</summary>
internal static class ControlQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ControlsNotChecked = Kinds.Add("controls-not-checked", QueryRank.Control, "the protocol keeps control results elsewhere, so that they were not checked here", "be ready to show them", point: "Controls were not checked.");
    internal static readonly QueryKind RunWithoutControl = Kinds.Add("run-without-control", QueryRank.Control, "a run has no control result", "add the control result; without one, the pairs of the run are left out", point: "A run has no control.");
    internal static readonly QueryKind ControlOutOfRange = Kinds.Add("control-out-of-range", QueryRank.Control, "a run has a control result outside its range", "follow your procedure for a run out of control", point: "A control was out of range.");
    internal static readonly QueryKind CalibrationNotBridged = Kinds.Add("calibration-not-bridged", QueryRank.Confounding, "no bridging plasma was tested in the runs of an analyte, so that a shift of calibration cannot be told from the delay", "test a bridging plasma twice in every run of the next study", point: "A shift between runs would not be seen.");
    internal static readonly QueryKind BridgingShift = Kinds.Add("bridging-shift", QueryRank.Control, "stable plasma shifted between the runs of baselines and of delayed tubes, so part of the change may come from the runs", "find out what changed between the runs", point: "The runs shifted.");
    // csharpier-ignore-end

    /// <summary>What the control results leave open, before anything is computed.</summary>
    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        OfRuns(rows).Concat(OfBridging(rows));

    /// <summary>Analyte by analyte of numbers: without a bridging plasma a change of calibration looks like one of the delay.</summary>
    private static IEnumerable<DataQuery> OfBridging(StudyRows rows)
    {
        var inputs = rows.Inputs;
        ImmutableArray<string> without =
        [
            .. inputs
                .Protocol.Analytes.Where(analyte =>
                    !analyte.IsQualitative
                    && MemoryMarshal
                        .ToEnumerable(rows.Of(analyte.Id))
                        .Any(row => !row.Occasion.IsBaseline)
                    && !inputs.Controls.Any(row =>
                        row.Analyte == analyte.Id && row.Kind == ControlKind.BridgingPlasma
                    )
                )
                .Select(analyte => analyte.Id),
        ];
        if (!without.IsEmpty)
        {
            yield return new(
                CalibrationNotBridged,
                DataFiles.ControlsAt(null, "kind"),
                "",
                $"{string.Join(", ", without)}: no bridging plasma was tested in the runs, so a shift of calibration between baseline and delayed runs cannot be told from the delay."
            );
        }
    }

    private static ImmutableArray<DataQuery> OfRuns(StudyRows rows) =>
        rows.Inputs.Protocol.Controls == ControlRule.KeptElsewhere
            ?
            [
                new(
                    ControlsNotChecked,
                    new("protocol.toml", null, "controls"),
                    "",
                    "Control results are kept elsewhere; whether every run was in control is not shown here.",
                    "Check that every run of this study was in control."
                ),
            ]
            : SideBySide.Of([
                .. rows.Inputs.Protocol.Analytes.Select(analyte =>
                    (Func<IEnumerable<DataQuery>>)(() => OfAnalyte(analyte, rows))
                ),
            ]);

    private static IEnumerable<DataQuery> OfAnalyte(Analyte analyte, StudyRows rows)
    {
        var controls = rows
            .Inputs.Controls.Where(row => row.Analyte == analyte.Id)
            .ToImmutableArray();
        var runs = TestedRun.All(rows.Of(analyte.Id).Span, controls);
        return OfStandings(analyte.Id, controls, runs)
            .Concat(ControlRecordQueries.Of(analyte, controls, runs));
    }

    /// <summary>A shift of bridging plasma that uses up a large part of the allowable bias.</summary>
    public static IEnumerable<DataQuery> OfShift(Cell cell, StudyProtocol protocol)
    {
        var smallest = protocol
            .Applying(cell.Key.Analyte, cell.Key.Group)
            .Where(item => item.Criterion is BiasCriterion)
            .Min(item => item.Limit?.Percent);
        if (
            cell.Controls?.Bridging?.MeanPercent.Value is { Mean: var mean }
            && smallest is { } limit
            && Math.Abs(mean) > (double)limit / 2
        )
        {
            yield return new(
                BridgingShift,
                DataFiles.ControlsAt(null, null),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"bridging plasma shifted by {mean:+0.0;-0.0} % from the runs of baselines to those of delayed tubes, more than half of the allowable bias of {limit} %; that much of the change is not due to the delay."
                ),
                "Find what differed between the runs before the window is used."
            )
            {
                Scope = QueryScope.Of(cell.Key),
            };
        }
    }

    private static IEnumerable<DataQuery> OfStandings(
        string analyte,
        ImmutableArray<ControlRow> controls,
        IEnumerable<TestedRun> tested
    )
    {
        var standing = RunControls.Standings(controls);
        var runs = tested
            .Select(run => run.Run)
            .Order(StringComparer.Ordinal)
            .ToLookup(run => standing.GetValueOrDefault(run));
        if (runs.Contains(RunStanding.WithoutControl))
        {
            yield return Query(
                RunWithoutControl,
                "without a control within its range",
                runs[RunStanding.WithoutControl],
                "Add the control results of these runs."
            );
        }

        if (runs.Contains(RunStanding.OutOfControl))
        {
            yield return Query(
                ControlOutOfRange,
                "with a control outside its range",
                runs[RunStanding.OutOfControl],
                "Correct the row when it is wrong. A run out of control shows nothing about the delay: its pairs are left out and counted; where that leaves too few days or runs, nothing is concluded."
            );
        }

        DataQuery Query(QueryKind kind, string how, IEnumerable<string> of, string? action = null)
        {
            ImmutableArray<string> codes = [.. of];
            return new(
                kind,
                DataFiles.ControlsAt(null, "run"),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{analyte}: {Counted.Of(codes.Length, "run")} {how}: {ControlDoubts.Names(codes)}; the pairs tested there are left out."
                ),
                action
            );
        }
    }
}
