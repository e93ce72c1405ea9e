using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Files.Canonical;

/// <summary>One fingerprint for everything that an analysis starts from.</summary>
public static class InputDigest
{
    /// <summary>
    /// SHA-256, lower-case hexadecimal, over the lines "name sha256" (each with a line feed, UTF-8) in ordinal order of the
    /// names.
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
