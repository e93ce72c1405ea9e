using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace StabilityStudy.Core.Looks;

/// <summary>
/// One look at changes: somebody saw figures or conclusions of these data, by an analysis or a report. The record of a
/// study holds its looks; those at other data, made before anybody looked at the data at hand, belong to what is analyzed.
/// </summary>
/// <param name="Number">From 1, in the order of the record.</param>
/// <param name="At">When, by the clock of the computer that was used.</param>
/// <param name="Action">What showed the figures: analyze or report.</param>
/// <param name="DataSha256">Fingerprint of the data and of the decisions about them.</param>
/// <param name="Cells">What was there to be seen of each time point.</param>
public sealed record EarlierLook(
    int Number,
    DateTimeOffset At,
    string Action,
    string DataSha256,
    ImmutableArray<LookedAtCell> Cells
)
{
    /// <summary>What was seen of a time point; null when nothing of it counted.</summary>
    public LookedAtCell? Of(CellKey key) =>
        Cells.FirstOrDefault(cell => cell.Key == key && cell.Counted > 0);
}

/// <summary>What a look showed of one time point.</summary>
/// <param name="Key">The time point.</param>
/// <param name="Planned">The planned number at that time.</param>
/// <param name="Usable">Specimens with a valid baseline.</param>
/// <param name="State">How far collection was.</param>
/// <param name="Counted">Pairs that counted.</param>
/// <param name="Conclusion">What the data of the time point alone concluded.</param>
/// <param name="Pairs">Every specimen of the time point.</param>
public sealed record LookedAtCell(
    CellKey Key,
    int Planned,
    int Usable,
    CollectionState State,
    int Counted,
    Conclusion Conclusion,
    ImmutableArray<LookedAtPair> Pairs
);

/// <summary>One specimen as a look showed it; there may be a million.</summary>
/// <param name="Specimen">Its code.</param>
/// <param name="Fingerprint">Fingerprint of its two results; null when the pair did not count.</param>
public readonly record struct LookedAtPair(string Specimen, uint? Fingerprint)
{
    /// <summary>A pair as it stands now.</summary>
    public static LookedAtPair Of(PairRecord pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return new(
            pair.Specimen,
            pair.CountsForAgreement
                ? FingerprintOf(
                    $"{pair.Status} {pair.Baseline?.Result.Text} {pair.Delayed?.Result.Text}"
                )
                : null
        );
    }

    /// <summary>Tells results apart without repeating them; short, because nobody gains by finding another pair of results with the same one.</summary>
    private static uint FingerprintOf(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        return BinaryPrimitives.ReadUInt32BigEndian(hash);
    }
}
