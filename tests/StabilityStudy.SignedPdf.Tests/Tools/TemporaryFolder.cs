namespace StabilityStudy.SignedPdf.Tests.Tools;

/// <summary>A folder that is gone after the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string FullName { get; } = Directory.CreateTempSubdirectory("signed-pdf-").FullName;

    public string Write(string name, ReadOnlySpan<byte> bytes)
    {
        var path = Path.Combine(FullName, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(FullName, recursive: true);
}
