using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Cli.Folders;

/// <summary>
/// What came of verifying the files of a register, kept for a day so that the next listing is quick. An entry belongs to the content of the file, to all that was trusted, to the
/// very build of the program and to the day, since certificates end and lists of revoked ones grow old. It carries an authentication code under a key that lies beside
/// it and that only its user can read: a damaged or exchanged entry, or one that another user wrote, is not used. It protects against nobody who works as this user,
/// who could exchange the program as well; an answer at the bench therefore verifies anew what it follows from.
/// </summary>
internal sealed class VerificationCache
{
    private const string KeyName = "key";
    private const int KeyBytes = 32;
    private const int MostBytes = 1 << 22;
    private const string DayForm = "yyyy-MM-dd";

    private readonly string _folder;
    private readonly string _scope;
    private readonly byte[] _key;

    private VerificationCache(string folder, string scope, byte[] key) =>
        (_folder, _scope, _key) = (folder, scope, key);

    /// <summary>The cache of a user; null where there is none or it cannot be used, which slows the program and changes nothing.</summary>
    /// <param name="root">The folder for caches of the program; null for none.</param>
    /// <param name="trust">Digest of all that is trusted.</param>
    /// <param name="now">The time.</param>
    public static VerificationCache? Open(string? root, string trust, DateTimeOffset now)
    {
        if (root is null)
        {
            return null;
        }

        var day = now.UtcDateTime.ToString(DayForm, CultureInfo.InvariantCulture);
        var scope = $"{day} {trust} {Build()}";
        try
        {
            var key = ReadKey(root);
            ForgetOtherDays(root, day);
            var folder = Path.Combine(
                root,
                $"{day}-{InputDigest.Sha256(Encoding.UTF8.GetBytes(scope))[..16]}"
            );
            Directory.CreateDirectory(folder);
            return new VerificationCache(folder, scope, key);
        }
        catch (Exception error) when (IsOfFiles(error))
        {
            return null;
        }
    }

    /// <summary>What is known of a file.</summary>
    /// <param name="sha256">SHA-256 of its content.</param>
    /// <param name="name">Its name now.</param>
    /// <param name="entry">The entry.</param>
    public bool TryRead(string sha256, string name, [NotNullWhen(true)] out RegisterEntry? entry)
    {
        entry = null;
        try
        {
            var path = PathOf(sha256);
            if (new FileInfo(path) is not { Exists: true, Length: > 0 and < MostBytes })
            {
                return false;
            }

            var bytes = File.ReadAllBytes(path);
            if (
                bytes.Length <= HMACSHA256.HashSizeInBytes
                || !CryptographicOperations.FixedTimeEquals(
                    bytes.AsSpan(0, HMACSHA256.HashSizeInBytes),
                    CodeOf(sha256, bytes.AsSpan(HMACSHA256.HashSizeInBytes))
                )
            )
            {
                return false;
            }

            entry = JsonSerializer
                .Deserialize(
                    bytes.AsSpan(HMACSHA256.HashSizeInBytes),
                    RegisterEntryJson.Default.RegisterEntry
                )
                ?.Named(name);
            return entry is not null;
        }
        catch (Exception error) when (IsOfFiles(error) || error is JsonException)
        {
            return false;
        }
    }

    /// <summary>Keeps what was found; where it cannot be written, it is found again the next time.</summary>
    public void Write(string sha256, RegisterEntry entry)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(
            entry,
            RegisterEntryJson.Default.RegisterEntry
        );
        try
        {
            AtomicFile.WriteOwn((PathOf(sha256), (byte[])[.. CodeOf(sha256, json), .. json]));
        }
        catch (UsageException)
        {
            // Without it the program is slower.
        }
    }

    private string PathOf(string sha256) => Path.Combine(_folder, sha256);

    private byte[] CodeOf(string sha256, ReadOnlySpan<byte> json) =>
        HMACSHA256.HashData(
            _key,
            (byte[])[.. Encoding.UTF8.GetBytes($"{_scope}\n{sha256}\n"), .. json]
        );

    /// <summary>The very build: two of one version may differ while it is developed.</summary>
    private static string Build() =>
        string.Join(
            ' ',
            new[]
            {
                typeof(VerificationCache),
                typeof(RegisterEntry),
                typeof(InputDigest),
                typeof(Pipeline.ToolVersion),
                typeof(Reporting.Model.ReportModel),
                typeof(SignedPdf.Verification.VerificationOptions),
                typeof(Statistics.Refusal),
            }.Select(type => type.Module.ModuleVersionId)
        );

    private static byte[] ReadKey(string root)
    {
        var path = Path.Combine(root, KeyName);
        if (File.Exists(path) && IsOwn(path) && File.ReadAllBytes(path) is { Length: KeyBytes } key)
        {
            return key;
        }

        var made = RandomNumberGenerator.GetBytes(KeyBytes);
        AtomicFile.WriteOwn((path, made));
        return made;
    }

    /// <summary>A key that others can read authenticates nothing; where the system knows no such rights, the folder of the user keeps others out.</summary>
    private static bool IsOwn(string path) =>
        OperatingSystem.IsWindows()
        || (File.GetUnixFileMode(path) & ~(UnixFileMode.UserRead | UnixFileMode.UserWrite))
            == UnixFileMode.None;

    /// <summary>Entries of another day are used no more.</summary>
    private static void ForgetOtherDays(string root, string day)
    {
        foreach (var folder in Directory.EnumerateDirectories(root))
        {
            var name = Path.GetFileName(folder);
            if (
                name.Length == DayForm.Length + 17
                && !name.StartsWith(day, StringComparison.Ordinal)
                && DateOnly.TryParseExact(
                    name[..DayForm.Length],
                    DayForm,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.None,
                    out _
                )
            )
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }

    private static bool IsOfFiles(Exception error) =>
        error is IOException or UnauthorizedAccessException or UsageException;
}
