using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Folders;

/// <summary>Looks whether a PDF was signed after it was written.</summary>
internal static class SignedFile
{
    /// <summary>
    /// The key of every signature. A signature must exempt its own bytes from what it signs, so this key is never compressed
    /// (ISO 32000-2, 12.8.1); a report as written here has none.
    /// </summary>
    private static ReadOnlySpan<byte> Key => "/ByteRange"u8;

    /// <summary>Whether a file exists there and holds a signature.</summary>
    /// <exception cref="UsageException">The file cannot be read.</exception>
    public static bool IsAt(string path) =>
        File.Exists(path)
        && InputFile.Read(path, StudyLimits.ReportBytes, "report").Span.IndexOf(Key) >= 0;
}
