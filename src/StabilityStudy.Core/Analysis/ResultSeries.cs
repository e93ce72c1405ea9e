using System.Runtime.InteropServices;

namespace StabilityStudy.Core.Analysis;

/// <summary>The measured results of one specimen and analyte in order of time, which begin with the baseline.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Line">First line on which one of them stands.</param>
/// <param name="Times">Which baseline, delays and replicates they are; only series of the same times are compared.</param>
/// <param name="Values">The results, as they are reported.</param>
internal sealed record ResultSeries(
    string Specimen,
    int Line,
    int Times,
    ImmutableArray<decimal> Values
)
{
    /// <summary>Takes series with the same numbers for one, however they are written.</summary>
    public static IEqualityComparer<ResultSeries> ByValues { get; } =
        EqualityComparer<ResultSeries>.Create(
            (first, second) => first!.Values.AsSpan().SequenceEqual(second!.Values.AsSpan()),
            series =>
            {
                var hash = new HashCode();
                foreach (var value in series.Values)
                {
                    hash.Add(value);
                }

                return hash.ToHashCode();
            }
        );

    /// <summary>Whether no result differs from another.</summary>
    public bool IsUnchanged => !Values.AsSpan().ContainsAnyExcept(Values[0]);

    /// <summary>The mean of the results before one of them.</summary>
    public double MeanBefore(int place)
    {
        var sum = 0.0;
        for (var i = 0; i < place; i++)
        {
            sum += (double)Values[i];
        }

        return sum / place;
    }

    /// <summary>Every series that has a delayed result and nothing but numbers.</summary>
    /// <param name="specimens">The rows of one analyte, those of a specimen together and in order of time.</param>
    public static ImmutableArray<ResultSeries> Of(
        ImmutableArray<ReadOnlyMemory<ResultRow>> specimens
    )
    {
        var patterns = new List<TestOccasion[]>();
        var found = ImmutableArray.CreateBuilder<ResultSeries>();
        foreach (var specimen in specimens)
        {
            var rows = specimen.Span;
            if (!rows[0].Occasion.IsBaseline || rows[^1].Occasion.IsBaseline)
            {
                continue;
            }

            if (ValuesOf(rows) is { } values)
            {
                found.Add(new(rows[0].Specimen, FirstLine(rows), PlaceOf(rows, patterns), values));
            }
        }

        return found.ToImmutable();
    }

    /// <summary>The numbers; null where one of the results is none.</summary>
    private static ImmutableArray<decimal>? ValuesOf(ReadOnlySpan<ResultRow> rows)
    {
        var values = new decimal[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i].Result is not MeasuredResult { Value: > 0 and var value })
            {
                return null;
            }

            values[i] = value;
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(values);
    }

    private static int FirstLine(ReadOnlySpan<ResultRow> rows)
    {
        var line = rows[0].SourceRow;
        foreach (var row in rows)
        {
            line = Math.Min(line, row.SourceRow);
        }

        return line;
    }

    private static int PlaceOf(ReadOnlySpan<ResultRow> rows, List<TestOccasion[]> patterns)
    {
        var place = 0;
        while (place < patterns.Count && !IsOf(rows, patterns[place]))
        {
            place++;
        }

        if (place == patterns.Count)
        {
            patterns.Add([.. rows.ToArray().Select(row => row.Occasion)]);
        }

        return place;
    }

    private static bool IsOf(ReadOnlySpan<ResultRow> rows, TestOccasion[] pattern)
    {
        if (rows.Length != pattern.Length)
        {
            return false;
        }

        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i].Occasion != pattern[i])
            {
                return false;
            }
        }

        return true;
    }
}
