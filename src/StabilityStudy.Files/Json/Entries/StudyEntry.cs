using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;

namespace StabilityStudy.Files.Json.Entries;

/// <summary>
/// A study as analysis.json has it: what belongs to a specimen, to a tube, or to a run of an analyte stands once, and
/// results and pairs name it by its code.
/// </summary>
/// <param name="Analysis">The study.</param>
/// <param name="Runs">The runs of each analyte.</param>
internal sealed record StudyEntry(StudyAnalysis Analysis, RunTable Runs)
{
    public static StudyEntry Of(StudyAnalysis analysis) => new(analysis, RunTable.Of(analysis));

    /// <summary>The specimens, by code.</summary>
    public ImmutableArray<SpecimenEntry> Specimens => SpecimenEntry.Of(Analysis);

    /// <summary>The sequences.</summary>
    public ImmutableArray<SequenceEntry> Sequences =>
        [.. Analysis.Sequences.Select(sequence => new SequenceEntry(sequence, Runs))];
}

/// <summary>A sequence of time points: the baseline of each specimen stands once.</summary>
/// <param name="Sequence">The sequence.</param>
/// <param name="Runs">The runs of each analyte.</param>
internal sealed record SequenceEntry(Sequence Sequence, RunTable Runs)
{
    /// <summary>The baseline of each specimen that has one.</summary>
    /// <exception cref="InvalidOperationException">A specimen has several.</exception>
    public ImmutableArray<ResultEntry> Baselines
    {
        get
        {
            var found = new OrderedDictionary<string, Measurement?>(StringComparer.Ordinal);
            foreach (var pair in Sequence.Cells.SelectMany(cell => cell.Pairs))
            {
                if (!found.TryAdd(pair.Specimen, pair.Baseline))
                {
                    OneStatement.Require(found[pair.Specimen], pair.Baseline, pair.Specimen);
                }
            }

            return
            [
                .. found
                    .Where(item => item.Value is not null)
                    .Select(item => Runs.EntryOf(Sequence.Analyte, item.Key, item.Value!)),
            ];
        }
    }

    /// <summary>The time points.</summary>
    public ImmutableArray<CellEntry> Cells =>
        [.. Sequence.Cells.Select(cell => new CellEntry(cell, Runs))];
}

/// <summary>A time point of a sequence.</summary>
/// <param name="Cell">The time point.</param>
/// <param name="Runs">The runs of each analyte.</param>
internal sealed record CellEntry(Cell Cell, RunTable Runs)
{
    /// <summary>The pairs.</summary>
    public ImmutableArray<PairEntry> Pairs =>
        [
            .. Cell.Pairs.Select(pair => new PairEntry(
                pair,
                pair.Delayed is { } delayed
                    ? Runs.EntryOf(Cell.Key.Analyte, pair.Specimen, delayed)
                    : null
            )),
        ];
}

/// <summary>A pair, whose baseline stands in its sequence.</summary>
/// <param name="Pair">The pair.</param>
/// <param name="Delayed">The delayed result; null when there is none.</param>
internal sealed record PairEntry(PairRecord Pair, ResultEntry? Delayed);

/// <summary>What stands once in the file must be the same wherever it comes from, or something would be lost.</summary>
internal static class OneStatement
{
    /// <exception cref="InvalidOperationException">The two are not the same.</exception>
    public static void Require<T>(T one, T other, string specimen)
    {
        if (!EqualityComparer<T>.Default.Equals(one, other))
        {
            throw new InvalidOperationException(
                $"The specimen {specimen} has two different {typeof(T).Name} where one is stated."
            );
        }
    }
}
