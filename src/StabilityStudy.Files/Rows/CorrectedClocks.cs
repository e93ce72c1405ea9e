using StabilityStudy.Core.Study;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Corrects times as study.toml states it, in results and in the controls of their runs.</summary>
internal sealed class CorrectedClocks
{
    private readonly ImmutableArray<Part<ClockCorrection>> _corrections;
    private readonly Dictionary<string, TimeSpan> _ofRun = new(StringComparer.Ordinal);

    private CorrectedClocks(ImmutableArray<Part<ClockCorrection>> corrections) =>
        _corrections = corrections;

    /// <summary>The results with their corrected times, and what corrects their controls.</summary>
    public static (RowTable<ResultRow> Results, CorrectedClocks Clocks) Apply(
        RowTable<ResultRow> results,
        FactsDraft? facts
    )
    {
        var clocks = new CorrectedClocks(facts?.ClockCorrections.Items ?? []);
        if (clocks._corrections.IsEmpty)
        {
            return (results, clocks);
        }

        var corrected = results with { Rows = [.. results.Rows.Select(clocks.Corrected)] };
        clocks.Check(facts!, results);
        return (corrected, clocks);
    }

    /// <summary>The controls with their corrected times.</summary>
    public RowTable<ControlRow> Of(RowTable<ControlRow> controls) =>
        _ofRun.Count == 0
            ? controls
            : controls with
            {
                Rows =
                [
                    .. controls.Rows.Select(row =>
                        _ofRun.TryGetValue(row.Run, out var shift)
                            ? row with
                            {
                                TestedAt = row.TestedAt + shift,
                                ClockCorrection = shift,
                            }
                            : row
                    ),
                ],
            };

    private ResultRow Corrected(ResultRow row)
    {
        if (
            _corrections.FirstOrDefault(part => part.Value.Concerns(row))
            is not { Value: var first }
        )
        {
            return row;
        }

        var shift = TimeSpan.FromMinutes(first.Minutes);
        if (row.Run.Length > 0)
        {
            _ofRun[row.Run] = shift;
        }

        return row with
        {
            TestedAt = row.TestedAt + shift,
            ClockCorrection = shift,
        };
    }

    private void Check(FactsDraft facts, RowTable<ResultRow> results)
    {
        ImmutableArray<string> runs =
        [
            .. results.Rows.Select(row => row.Run).Where(run => run.Length > 0).Distinct(),
        ];
        var instruments = facts.Instruments.Codes(InstrumentKeys.Id, instrument => instrument.Id);
        for (var i = 0; i < _corrections.Length; i++)
        {
            var (table, correction) = _corrections[i];
            if (correction.Runs.IsEmpty == correction.Days.IsEmpty)
            {
                table.Remark(
                    ClockCorrectionKeys.Runs,
                    FileQueries.MissingKey,
                    "",
                    "A correction of a clock needs either the runs or the days that it concerns.",
                    "Write runs where results name their run, else days, not both."
                );
                continue;
            }

            References.Check(
                table,
                ClockCorrectionKeys.Instrument,
                correction.Instrument ?? "",
                "instrument",
                instruments
            );
            foreach (var run in correction.Runs)
            {
                References.Check(table, ClockCorrectionKeys.Runs, run, "run of a result", runs);
            }

            var rows = results.Rows.Where(correction.Concerns).ToImmutableArray();
            if (rows.IsEmpty && correction.Runs.All(runs.Contains))
            {
                table.Remark(
                    ClockCorrectionKeys.Minutes,
                    ProtocolQueries.UnknownReference,
                    correction.Where,
                    $"No result was tested in {correction.Where}, so that nothing is corrected.",
                    "Correct runs, days or instrument, or remove the correction."
                );
            }

            if (
                rows.FirstOrDefault(row =>
                    _corrections.Take(i).Any(part => part.Value.Concerns(row))
                ) is
                { } twice
            )
            {
                table.Remark(
                    ClockCorrectionKeys.Minutes,
                    ProtocolQueries.DuplicateId,
                    correction.Where,
                    $"The time of {ResultDuplicates.KeyOf(twice)} is already corrected by an earlier [[clock_correction]].",
                    "Let each result be concerned by one correction."
                );
            }
        }
    }
}
