using System.Text;
using StabilityStudy.Files.Canonical;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads whom to trust from files and folders. Certificates and lists of revoked ones are told apart by what they hold.</summary>
/// <param name="Trust">Who vouches for signers: files and folders.</param>
/// <param name="TrustTime">Who vouches for time-stamp authorities: files and folders.</param>
/// <param name="Revoked">Lists of revoked certificates: files and folders.</param>
internal sealed record TrustInput(string[] Trust, string[] TrustTime, string[] Revoked)
{
    /// <summary>What a verification may rely on.</summary>
    /// <param name="now">When is verified.</param>
    /// <exception cref="UsageException">A file that was named cannot be used, or an option brings nothing of what it is for.</exception>
    public VerificationOptions Read(DateTimeOffset now)
    {
        var unread = ImmutableArray.CreateBuilder<string>();
        var trust = Files("--trust", Trust, "certificate", file => file.HoldsCertificate, unread);
        var time = Files(
            "--trust-time",
            TrustTime,
            "certificate",
            file => file.HoldsCertificate,
            unread
        );
        var revoked = Files(
            "--revoked",
            Revoked,
            "list of revoked certificates",
            file => !file.RevocationLists.IsEmpty,
            unread
        );
        return new VerificationOptions(
            Trust.Length == 0 ? null : TrustAnchors.Of(trust),
            [.. trust.Concat(time).Concat(revoked).SelectMany(file => file.RevocationLists)]
        )
        {
            TimeAnchors = TrustTime.Length == 0 ? null : TrustAnchors.Of(time),
            Now = now,
            UnreadFiles = [.. unread.Distinct(StringComparer.Ordinal)],
        };
    }

    /// <summary>Digest of all files that are trusted, so that what was found by other ones is told apart.</summary>
    /// <exception cref="UsageException">A file cannot be read.</exception>
    public string Digest() =>
        InputDigest.Sha256(
            Encoding.UTF8.GetBytes(
                string.Join(
                    '\n',
                    new[] { Trust, TrustTime, Revoked }.SelectMany(
                        (paths, kind) =>
                            paths
                                .SelectMany(path =>
                                    Directory.Exists(path) ? KeyFile.In(path) : [path]
                                )
                                .Select(file =>
                                    FormattableString.Invariant(
                                        $"{kind} {Path.GetFileName(file)} {DigestOf(file)}"
                                    )
                                )
                    )
                )
            )
        );

    /// <summary>Of a file that cannot be read, and that <see cref="Read"/> has named, its name must do.</summary>
    private static string DigestOf(string file)
    {
        try
        {
            return InputDigest.Sha256(KeyFile.Bytes(file).Span);
        }
        catch (UsageException)
        {
            return "cannot be read";
        }
    }

    private static ImmutableArray<TrustFile> Files(
        string option,
        string[] paths,
        string kind,
        Func<TrustFile, bool> isOfKind,
        ImmutableArray<string>.Builder unread
    )
    {
        ImmutableArray<TrustFile> files = [.. paths.SelectMany(path => FilesAt(path, unread))];
        return paths.Length == 0 || files.Any(isOfKind)
            ? files
            : throw new UsageException(
                string.Join(
                    ' ',
                    unread.Prepend($"{option}: there is no {kind} in {string.Join(", ", paths)}.")
                )
            );
    }

    private static List<TrustFile> FilesAt(string path, ImmutableArray<string>.Builder unread) =>
        Directory.Exists(path) ? InFolder(path, unread)
        : TrustFile.Read(KeyFile.Bytes(path)).TryGet(out var file, out var failure) ? [file]
        : throw new UsageException($"{path}: {failure.What}");

    /// <summary>One file that is not right must not keep the others of its folder from being used; it is named.</summary>
    private static List<TrustFile> InFolder(string path, ImmutableArray<string>.Builder unread)
    {
        var found = new List<TrustFile>();
        foreach (var file in KeyFile.In(path))
        {
            string problem;
            try
            {
                if (TrustFile.Read(KeyFile.Bytes(file)).TryGet(out var read, out var failure))
                {
                    found.Add(read);
                    continue;
                }

                problem = $"{file}: {failure.What}";
            }
            catch (UsageException error)
            {
                problem = error.Message;
            }

            if (IsMeant(file))
            {
                unread.Add(problem + " It was left out, and what it would have said is not known.");
            }
        }

        return found;
    }

    /// <summary>Keys and passphrases may lie beside certificates; only what has the name of a certificate or list must be one.</summary>
    private static bool IsMeant(string file) =>
        Path.GetExtension(file).ToUpperInvariant()
            is ".PEM"
                or ".CRT"
                or ".CER"
                or ".DER"
                or ".CRL"
                or ".P7B"
                or ".P7C";
}
