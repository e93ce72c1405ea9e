using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Tests.ReadyProtocols;

/// <summary>A file of protocols/.</summary>
internal sealed record ReadyProtocolFile(string Name, string Text, StudyProtocol Protocol)
{
    public static string Folder { get; } = Path.Combine(RepositoryFile.Root, "protocols");

    public static TheoryData<string> Names =>
        [
            .. Directory
                .EnumerateFiles(Folder, "*.toml")
                .Select(path => Path.GetFileNameWithoutExtension(path))
                .Order(StringComparer.Ordinal),
        ];

    public static ReadyProtocolFile Read(string name)
    {
        var path = Path.Combine(Folder, name + ".toml");
        var outcome = ProtocolReader.Read(File.ReadAllBytes(path), name);
        Assert.True(
            outcome.TryGet(out var protocol),
            string.Join("\n", outcome.Queries.Select(query => query.Message))
        );
        return new(name, File.ReadAllText(path), protocol);
    }

    /// <summary>Every analyte whose results are numbers, in every group in which it is studied.</summary>
    public IEnumerable<(Analyte Analyte, PatientGroup Group)> Studied =>
        from analyte in Protocol.Analytes
        where !analyte.IsQualitative
        from patients in Protocol.Groups
        where analyte.Groups.IsEmpty || analyte.Groups.Contains(patients.Id)
        select (analyte, patients);

    /// <summary>The storages in which an analyte is studied.</summary>
    public IEnumerable<Storage> StoragesOf(Analyte analyte) =>
        Protocol.Storages.Where(storage =>
            analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id)
        );
}
