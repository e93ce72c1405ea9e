using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Collecting;

/// <summary>Rows of results drawn at random, to be compared with the instrument's printout.</summary>
public static class TranscriptionSample
{
    private const double ConfidenceLevel = 0.95;

    /// <summary>
    /// Draws rows: each has a place by the SHA-256 of the seed and its key, and the first ones are taken. So the order of the file changes nothing, and rows added later leave the places of the others as they are.
    /// Of one specimen and analyte at most one row is drawn, so that the sheet shows no change.
    /// </summary>
    /// <param name="results">The rows.</param>
    /// <param name="seed">The seed, which the study records.</param>
    /// <param name="count">How many are wanted.</param>
    /// <param name="upTo">Rows tested later are left out.</param>
    /// <returns>The rows by the time of their test; fewer than wanted where there are not as many specimens.</returns>
    public static ImmutableArray<ResultRow> Draw(
        ImmutableArray<ResultRow> results,
        int seed,
        int count,
        DateTimeOffset upTo
    ) =>
        [
            .. results
                .Where(row => row.TestedAt <= upTo)
                .Select(row => (Row: row, Place: PlaceOf(row, seed)))
                .GroupBy(item => (item.Row.Specimen, item.Row.Analyte))
                .Select(same => same.MinBy(item => item.Place, StringComparer.Ordinal))
                .OrderBy(item => item.Place, StringComparer.Ordinal)
                .Take(count)
                .Select(item => item.Row)
                .OrderBy(row => row.TestedAt)
                .ThenBy(row => row.Specimen, StringComparer.Ordinal)
                .ThenBy(row => row.Analyte, StringComparer.Ordinal),
        ];

    /// <summary>How large a share of all rows may differ, percent, when none of those drawn does: exact one-sided upper bound at 95 %.</summary>
    /// <param name="rows">How many rows were compared, at least 1.</param>
    public static double LargestSharePercent(int rows) =>
        100 * ClopperPearson.Bounds(0, rows, ConfidenceLevel).OneSidedUpper;

    private static string PlaceOf(ResultRow row, int seed) =>
        Convert.ToHexString(
            SHA256.HashData(
                Encoding.UTF8.GetBytes(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{seed}\n{row.Specimen}\n{row.Tube}\n{row.Analyte}\n{row.Occasion}\n{row.Replicate}"
                    )
                )
            )
        );
}
