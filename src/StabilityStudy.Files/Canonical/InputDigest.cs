using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Files.Canonical;

/// <summary>One fingerprint for everything that an analysis starts from.</summary>
public static class InputDigest
{
    /// <summary>
    /// For each file one line: its name, one space, the SHA-256 of its content in lower-case hexadecimal, and a line feed
    /// (byte 10), the last line included. The lines stand in ordinal order of the names (by their UTF-16 code units). The
    /// digest is the SHA-256 of these lines as UTF-8 without a byte order mark, in lower-case hexadecimal. The files are
    /// protocol.toml, study.toml, protocol.lock when the protocol was locked, the canonical specimens.csv and results.csv,
    /// the canonical controls.csv when the study has control results, locked-1.toml and so on for earlier versions of an
    /// amended protocol whose copies are at hand, and looks.csv when other data of the study were looked at before.
    /// </summary>
    /// <param name="files">Names and hashes of protocol, study facts and canonical files; each name once.</param>
    /// <exception cref="ArgumentException">A name stands twice.</exception>
    public static string Compute(ImmutableArray<FileHash> files)
    {
        if (
            files.Select(file => file.Name).Distinct(StringComparer.Ordinal).Count() != files.Length
        )
        {
            throw new ArgumentException("A name stands twice.", nameof(files));
        }

        var lines = files
            .OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file => $"{file.Name} {file.Sha256}\n");
        return Sha256(Encoding.UTF8.GetBytes(string.Concat(lines)));
    }

    /// <summary>SHA-256 of bytes, lower-case hexadecimal.</summary>
    public static string Sha256(ReadOnlySpan<byte> bytes) =>
        Convert.ToHexStringLower(SHA256.HashData(bytes));
}
