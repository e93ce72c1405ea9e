using System.Security.Cryptography;
using System.Text;

namespace StabilityStudy.Core.Bench;

/// <summary>The random order in which the tubes of a run are tested.</summary>
public static class RunOrder
{
    /// <summary>
    /// A place for each specimen: they are ordered by the SHA-256 of seed, specimen, storage and time. So a tube keeps its place before or behind another one, whichever
    /// specimens come or fail to come.
    /// </summary>
    /// <param name="specimens">Specimens of the run, each once.</param>
    /// <param name="storage">Storage of the run.</param>
    /// <param name="occasion">Time of the run.</param>
    /// <param name="seed">The seed, which is printed on the sheet.</param>
    /// <returns>The places from 1, in the order of the specimens given.</returns>
    public static ImmutableArray<int> Of(
        ImmutableArray<string> specimens,
        string storage,
        TestOccasion occasion,
        int seed
    )
    {
        var places = specimens
            .Select(
                (specimen, i) =>
                    (
                        Index: i,
                        Hash: Convert.ToHexString(
                            SHA256.HashData(
                                Encoding.UTF8.GetBytes(
                                    string.Create(
                                        CultureInfo.InvariantCulture,
                                        $"{seed}\n{specimen}\n{storage}\n{occasion}"
                                    )
                                )
                            )
                        )
                    )
            )
            .OrderBy(item => item.Hash, StringComparer.Ordinal)
            .Select((item, rank) => (item.Index, Rank: rank + 1))
            .ToDictionary(item => item.Index, item => item.Rank);
        return [.. specimens.Select((_, i) => places[i])];
    }

    /// <summary>The seed of a study for which none was chosen: from its protocol, so that every sheet of the study has the same.</summary>
    /// <param name="protocolSha256">SHA-256 of protocol.toml, hexadecimal.</param>
    public static int SeedOf(string protocolSha256)
    {
        ArgumentNullException.ThrowIfNull(protocolSha256);
        const int most = 100_000_000;
        return (int)(
            uint.Parse(
                protocolSha256.AsSpan(0, 8),
                NumberStyles.AllowHexSpecifier,
                CultureInfo.InvariantCulture
            ) % most
        );
    }
}
