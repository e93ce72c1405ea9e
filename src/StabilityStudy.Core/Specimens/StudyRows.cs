using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Specimens;

/// <summary>The rows of a study by specimen, and its results by analyte and specimen, found once for all that look at them.</summary>
internal sealed class StudyRows
{
    private readonly Numbering<string> _numbers = new();
    private readonly Numbering<string> _analytes = new();
    private readonly GroupedRows<ResultRow> _byAnalyte;

    public StudyRows(StudyInputs inputs)
    {
        Inputs = inputs;
        var ofTubes = Numbered(inputs.Tubes, tube => tube.Specimen, _numbers);
        var ofResults = Numbered(inputs.Results, row => row.Specimen, _numbers);
        var count = _numbers.Count;
        var tubes = GroupedRows<TubeRow>.Of(inputs.Tubes, ofTubes, count);
        var results = GroupedRows<ResultRow>.Of(inputs.Results, ofResults, count);
        IsInOrder = results.IsInOrder;
        Specimens =
        [
            .. _numbers.Items.Select(
                (specimen, number) =>
                    new SpecimenRows(number, specimen, tubes[number], results[number])
            ),
        ];

        for (var i = 0; i < ofResults.Length; i++)
        {
            ofResults[i] += count * _analytes.Of(inputs.Results[i].Analyte);
        }

        _byAnalyte = GroupedRows<ResultRow>.Of(inputs.Results, ofResults, _analytes.Count * count);
    }

    public StudyInputs Inputs { get; }

    /// <summary>Whether the results of each specimen follow each other, in the order of the specimens.</summary>
    public bool IsInOrder { get; }

    /// <summary>Every specimen, those with tubes first, each in the order of its first row.</summary>
    public ImmutableArray<SpecimenRows> Specimens { get; }

    /// <summary>The analytes that have results.</summary>
    public ImmutableArray<string> Analytes => _analytes.Items;

    /// <summary>The rows of a specimen; null where no row names it.</summary>
    public SpecimenRows? Specimen(string code) =>
        _numbers.TryGet(code, out var number) ? Specimens[number] : null;

    /// <summary>The results of a specimen; none where no row names it.</summary>
    public IEnumerable<ResultRow> ResultsOf(string code) =>
        Specimen(code) is { } specimen ? MemoryMarshal.ToEnumerable(specimen.Results) : [];

    /// <summary>The tubes of a specimen; none where no row names it.</summary>
    public IEnumerable<TubeRow> TubesOf(string code) =>
        Specimen(code) is { } specimen ? MemoryMarshal.ToEnumerable(specimen.Tubes) : [];

    /// <summary>Whether a tube has a result of some kind.</summary>
    public bool HasResult(TubeRow tube, Func<ResultRow, bool> isOfKind)
    {
        foreach (var row in (Specimen(tube.Specimen)?.Results ?? default).Span)
        {
            if (row.Tube == tube.Tube && isOfKind(row))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The results of an analyte, those of a specimen together.</summary>
    public ReadOnlyMemory<ResultRow> Of(string analyte) =>
        _analytes.TryGet(analyte, out var number)
            ? _byAnalyte.Of(number * Specimens.Length, (number + 1) * Specimens.Length)
            : default;

    /// <summary>The results of a specimen for an analyte.</summary>
    public ReadOnlyMemory<ResultRow> Of(string analyte, SpecimenRows specimen) =>
        _analytes.TryGet(analyte, out var number)
            ? _byAnalyte[(number * Specimens.Length) + specimen.Number]
            : default;

    /// <summary>The number of the specimen of each row; rows of a specimen mostly follow each other.</summary>
    private static int[] Numbered<T>(
        ImmutableArray<T> rows,
        Func<T, string> specimenOf,
        Numbering<string> numbers
    )
    {
        var numbered = new int[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            var specimen = specimenOf(rows[i]);
            numbered[i] =
                i > 0 && specimen == specimenOf(rows[i - 1])
                    ? numbered[i - 1]
                    : numbers.Of(specimen);
        }

        return numbered;
    }
}
