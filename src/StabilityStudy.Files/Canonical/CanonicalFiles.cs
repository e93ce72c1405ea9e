using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>The data in the one form that an analysis reads and a report carries.</summary>
/// <param name="Files">Specimens, results, controls when the study has any, and earlier looks when there were any.</param>
public sealed record CanonicalFiles(ImmutableArray<CanonicalFile> Files)
{
    /// <summary>The data alone, without earlier looks.</summary>
    public ImmutableArray<CanonicalFile> Data =>
        [.. Files.Where(file => file.Name != StudyFileNames.Looks)];

    /// <summary>The file of earlier looks.</summary>
    public static CanonicalFile Looks(ImmutableArray<EarlierLook> looks) =>
        CanonicalCsv
            .Write(LookColumns.Table, LookRow.Of(looks), row => row.Number)
            .Named(StudyFileNames.Looks);
}

/// <summary>A file in canonical form.</summary>
/// <param name="Name">Name under which it is attached to a report.</param>
/// <param name="Bytes">Content.</param>
/// <param name="Sha256">SHA-256 of the content, lower-case hexadecimal.</param>
public sealed record CanonicalFile(string Name, ReadOnlyMemory<byte> Bytes, string Sha256)
{
    /// <summary>A file with its hash.</summary>
    public static CanonicalFile Of(string name, ReadOnlyMemory<byte> bytes) =>
        new(name, bytes, InputDigest.Sha256(bytes.Span));
}
