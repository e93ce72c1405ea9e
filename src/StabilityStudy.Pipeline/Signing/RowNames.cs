using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>The names of rows by which a decision is stated: "aPTT/ufh", with storage and instrument only where they tell rows apart.</summary>
internal static class RowNames
{
    private const char Separator = '/';

    /// <summary>The shortest name that no other row has.</summary>
    public static string Of(ConcludedWindow row, ImmutableArray<ConcludedWindow> rows)
    {
        var parts = Parts(row);
        return Enumerable
            .Range(2, parts.Length - 2)
            .Select(count => string.Join(Separator, parts[..count]))
            .FirstOrDefault(
                name => rows.Count(other => IsNamed(other, name)) == 1,
                string.Join(Separator, parts)
            );
    }

    /// <summary>The row of a name; null where none or several have it.</summary>
    public static ConcludedWindow? Find(string name, ImmutableArray<ConcludedWindow> rows) =>
        rows.Where(row => IsNamed(row, name)).ToImmutableArray() is [var only] ? only : null;

    /// <summary>Codes in their order, of which some may be left out, but not the analyte's.</summary>
    private static bool IsNamed(ConcludedWindow row, string name)
    {
        var given = name.Split(Separator);
        var next = 0;
        foreach (var part in Parts(row))
        {
            next += next < given.Length && given[next].Trim() == part ? 1 : 0;
        }

        return next == given.Length && given[0].Trim() == row.Analyte;
    }

    private static ImmutableArray<string> Parts(ConcludedWindow row) =>
        row.IsOfOneInstrument
            ? [row.Analyte, row.Group, row.Storage, string.Join(", ", row.Instruments)]
            : [row.Analyte, row.Group, row.Storage];
}
