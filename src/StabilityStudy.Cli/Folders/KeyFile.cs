using System.Text;
using StabilityStudy.Cli.Console;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads a signing key; its passphrase comes from a file, the environment or a question, never from an argument.</summary>
internal static class KeyFile
{
    /// <summary>The environment variable that may hold the passphrase.</summary>
    public const string Variable = "STABILITY_STUDY_PASSPHRASE";

    private const int LongestPassphrase = 1 << 12;

    /// <summary>The key. Dispose of it after signing.</summary>
    /// <exception cref="UsageException">There is no key in the file, or it cannot be opened.</exception>
    public static SigningKey Read(
        string path,
        string? certificatePath,
        string? passphrasePath,
        Terminal terminal
    )
    {
        var key = Bytes(path);
        // "null" alone would become an empty file.
        var certificate = certificatePath is null
            ? (ReadOnlyMemory<byte>?)null
            : Bytes(certificatePath);
        var passphrase = passphrasePath is not null
            ? FirstLine(passphrasePath)
            : terminal.Passphrase;
        var result = SigningKeyReader.Read(key, certificate, passphrase);
        if (
            !result.TryGet(out var found, out var problem)
            && problem == SigningKeyProblem.PassphraseNeeded
            && terminal.Ask is { } ask
        )
        {
            result = SigningKeyReader.Read(key, certificate, ask($"Passphrase of {path}: "));
            result.TryGet(out found, out problem);
        }

        return found ?? throw new UsageException($"{path}: {SigningWords.Of(problem)}");
    }

    /// <summary>Reads a small file.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte> Bytes(string path) =>
        InputFile.ReadFilled(path, StudyLimits.KeyBytes, "key or certificate");

    private static string FirstLine(string path)
    {
        try
        {
            // May be a pipe from a store of passphrases.
            using var reader = new StreamReader(path, Encoding.UTF8);
            var text = new char[LongestPassphrase];
            var length = reader.ReadBlock(text);
            var end = text.AsSpan(0, length).IndexOfAny('\r', '\n');
            return new string(text, 0, end < 0 ? length : end);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be read: {error.Message}", error);
        }
    }

    /// <summary>The files in a folder, by name.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ImmutableArray<string> In(string folder)
    {
        try
        {
            return [.. Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal)];
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{folder} cannot be read: {error.Message}", error);
        }
    }
}
