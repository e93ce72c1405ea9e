using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Pairing;

namespace StabilityStudy.Files.Columns;

/// <summary>A row of looks.csv: some specimens of one time point as one look showed them.</summary>
/// <param name="Number">Number of the row.</param>
/// <param name="Look">Number of the look.</param>
/// <param name="At">When.</param>
/// <param name="Action">What showed the figures.</param>
/// <param name="Data">Fingerprint of the data.</param>
/// <param name="Analyte">Analyte.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Storage">Storage.</param>
/// <param name="TimePoint">Time point.</param>
/// <param name="Planned">The planned number at that time.</param>
/// <param name="Usable">Specimens with a valid baseline.</param>
/// <param name="State">How far collection was.</param>
/// <param name="Counted">Pairs that counted at the time point, over all its rows.</param>
/// <param name="Conclusion">What the time point's data concluded.</param>
/// <param name="Pairs">Specimens with the fingerprints of their results.</param>
internal sealed record LookRow(
    int Number,
    int Look,
    DateTimeOffset At,
    string Action,
    string Data,
    string Analyte,
    string Group,
    string Storage,
    string TimePoint,
    int Planned,
    int Usable,
    CollectionState State,
    int Counted,
    Conclusion Conclusion,
    string Pairs
)
{
    private const int PairsInRow = 200;
    private const string NotCounted = "-";
    private const string FingerprintForm = "x8";

    /// <summary>The rows of looks: each time point in as many as its specimens need.</summary>
    public static ImmutableArray<LookRow> Of(ImmutableArray<EarlierLook> looks)
    {
        var rows = ImmutableArray.CreateBuilder<LookRow>();
        foreach (var look in looks)
        {
            foreach (var cell in look.Cells)
            {
                foreach (var pairs in cell.Pairs.Chunk(PairsInRow))
                {
                    rows.Add(
                        new(
                            rows.Count + 1,
                            look.Number,
                            look.At,
                            look.Action,
                            look.DataSha256,
                            cell.Key.Analyte,
                            cell.Key.Group,
                            cell.Key.Storage,
                            cell.Key.TimePoint.ToString(),
                            cell.Planned,
                            cell.Usable,
                            cell.State,
                            cell.Counted,
                            cell.Conclusion,
                            Written(pairs)
                        )
                    );
                }
            }
        }

        return rows.ToImmutable();
    }

    /// <summary>Specimens with their fingerprints in one field.</summary>
    public static string Written(IEnumerable<LookedAtPair> pairs) =>
        string.Join(' ', pairs.Select(pair => $"{pair.Specimen}:{Written(pair.Fingerprint)}"));

    private static string Written(uint? fingerprint) =>
        fingerprint?.ToString(FingerprintForm, CultureInfo.InvariantCulture) ?? NotCounted;

    /// <summary>The same read again; a specimen's code may hold a colon, a fingerprint none. One that the program does not write is none.</summary>
    public static IEnumerable<LookedAtPair> PairsOf(string words) =>
        from word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries)
        let at = word.LastIndexOf(':')
        where at > 0
        select new LookedAtPair(
            word[..at],
            uint.TryParse(
                word.AsSpan(at + 1),
                NumberStyles.AllowHexSpecifier,
                CultureInfo.InvariantCulture,
                out var fingerprint
            )
                ? fingerprint
                : null
        );

    /// <summary>The key of a time point; null where the time cannot be read.</summary>
    public static CellKey? KeyOf(string analyte, string group, string storage, string timePoint) =>
        DurationText.TryParse(timePoint, out var delay)
            ? new CellKey(analyte, group, storage, new TimePoint(delay))
            : null;
}
