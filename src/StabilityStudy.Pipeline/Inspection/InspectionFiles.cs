using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Pipeline.Inspection;

/// <summary>A file of an inspection folder; parts of its name are divided by slashes.</summary>
/// <param name="Name">Name in the folder.</param>
/// <param name="Bytes">Content.</param>
public sealed record InspectionFile(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>Names in an inspection folder, and its list of files, in the form that sha256sum reads.</summary>
public static class InspectionFiles
{
    /// <summary>The index.</summary>
    public const string Index = "index.pdf";

    /// <summary>The list of files with their SHA-256.</summary>
    public const string List = "files.sha256";

    /// <summary>The register as a table.</summary>
    public const string Register = "register.csv";

    /// <summary>The signed files, and the locks of studies without a report, as they lie in the register.</summary>
    public const string SignedFolder = "register/";

    /// <summary>The documents of the bench.</summary>
    public const string Bench = "bench/";

    /// <summary>What verification found, a text a signed file.</summary>
    public const string Verification = "verification/";

    private const int Digest = 64;
    private const string Between = "  ";

    /// <summary>Whether a name can stand in the list: on a line of its own, without what a shell or another system takes otherwise.</summary>
    public static bool CanBeListed(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.All(c => !char.IsControl(c) && c != '\\');
    }

    internal static ImmutableArray<FileHash> Listed(IEnumerable<InspectionFile> files) =>
        [
            .. files
                .Select(file => new FileHash(file.Name, InputDigest.Sha256(file.Bytes.Span)))
                .OrderBy(file => file.Name, StringComparer.Ordinal),
        ];

    internal static ReadOnlyMemory<byte> WriteList(ImmutableArray<FileHash> list) =>
        Encoding.UTF8.GetBytes(
            string.Concat(list.Select(file => $"{file.Sha256}{Between}{file.Name}\n"))
        );

    /// <summary>Reads a list; null where a line is none of its form.</summary>
    internal static ImmutableArray<FileHash>? ReadList(ReadOnlySpan<byte> utf8)
    {
        var list = ImmutableArray.CreateBuilder<FileHash>();
        foreach (var line in Encoding.UTF8.GetString(utf8).Split('\n')[..^1])
        {
            if (
                line.Length <= Digest + Between.Length
                || !line[..Digest].All(char.IsAsciiHexDigitLower)
                || line[Digest..(Digest + Between.Length)] != Between
            )
            {
                return null;
            }

            list.Add(new FileHash(line[(Digest + Between.Length)..], line[..Digest]));
        }

        return list.ToImmutable();
    }
}
