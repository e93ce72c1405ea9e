using System.Runtime.InteropServices;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;

namespace StabilityStudy.Files.Json.Entries;

/// <summary>A run of an analyte with what all its results share.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Run">Code of the run.</param>
/// <param name="Instrument">Instrument; null where the results have several or none.</param>
/// <param name="Lot">Reagent lot; null where the results have several or none.</param>
/// <param name="Calibration">Calibration; null where the results have several or none.</param>
/// <param name="Operator">Who tested; null where the results have several or none.</param>
internal sealed record RunEntry(
    string Analyte,
    string Run,
    string? Instrument,
    string? Lot,
    string? Calibration,
    string? Operator
)
{
    /// <summary>What is still shared when a further result is of the run.</summary>
    public RunEntry With(Measurement result) =>
        this with
        {
            Instrument = Shared(Instrument, result.Instrument),
            Lot = Shared(Lot, result.Lot),
            Calibration = Shared(Calibration, result.Calibration),
            Operator = Shared(Operator, result.Operator),
        };

    private static string? Shared(string? one, string other) => one == other ? one : null;
}

/// <summary>A result with what its run does not state.</summary>
/// <param name="Specimen">Code of the specimen.</param>
/// <param name="Result">The result.</param>
/// <param name="Run">Its run; null when not recorded.</param>
internal sealed record ResultEntry(string Specimen, Measurement Result, RunEntry? Run)
{
    /// <summary>Instrument; empty where the run states it, or when not recorded.</summary>
    public string Instrument => Run?.Instrument is null ? Result.Instrument : "";

    /// <summary>Reagent lot; empty where the run states it, or when not recorded.</summary>
    public string Lot => Run?.Lot is null ? Result.Lot : "";

    /// <summary>Calibration; empty where the run states it, or when not recorded.</summary>
    public string Calibration => Run?.Calibration is null ? Result.Calibration : "";

    /// <summary>Who tested; empty where the run states it, or when not recorded.</summary>
    public string Operator => Run?.Operator is null ? Result.Operator : "";
}

/// <summary>The runs of each analyte.</summary>
internal sealed class RunTable
{
    private readonly Dictionary<(string Analyte, string Run), RunEntry> _runs = [];

    private RunTable() { }

    /// <summary>The runs, by analyte and code.</summary>
    public ImmutableArray<RunEntry> All =>
        [
            .. _runs
                .Values.OrderBy(run => run.Analyte, StringComparer.Ordinal)
                .ThenBy(run => run.Run, StringComparer.Ordinal),
        ];

    public static RunTable Of(StudyAnalysis analysis)
    {
        var table = new RunTable();
        foreach (var sequence in analysis.Sequences)
        {
            foreach (var pair in sequence.Cells.SelectMany(cell => cell.Pairs))
            {
                table.Add(sequence.Analyte, pair.Baseline);
                table.Add(sequence.Analyte, pair.Delayed);
            }
        }

        return table;
    }

    /// <summary>A result with what its run does not state.</summary>
    public ResultEntry EntryOf(string analyte, string specimen, Measurement result) =>
        new(specimen, result, _runs.GetValueOrDefault((analyte, result.Run)));

    private void Add(string analyte, Measurement? result)
    {
        if (result is not { Run.Length: > 0 })
        {
            return;
        }

        ref var run = ref CollectionsMarshal.GetValueRefOrAddDefault(
            _runs,
            (analyte, result.Run),
            out _
        );
        run =
            run?.With(result)
            ?? new RunEntry(
                analyte,
                result.Run,
                result.Instrument,
                result.Lot,
                result.Calibration,
                result.Operator
            );
    }
}
