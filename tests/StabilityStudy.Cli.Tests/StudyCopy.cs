using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>A copy of the example study in a folder of its own, removed at the end.</summary>
internal sealed class StudyCopy : IDisposable
{
    private StudyCopy(string root) => Root = root;

    /// <summary>A folder for anything the test writes.</summary>
    public string Root { get; }

    public string Study => Path.Combine(Root, "study");

    /// <summary>A copy of some files of another example.</summary>
    public static StudyCopy CreateOf(string folder, params string[] names)
    {
        var copy = Empty();
        foreach (var name in names)
        {
            File.Copy(Path.Combine(folder, name), Path.Combine(copy.Study, name));
        }

        return copy;
    }

    /// <summary>A copy of the smallest example, whose report is drawn soonest.</summary>
    public static StudyCopy CreateSmall() =>
        CreateOf(ExampleStudy.SmallFolder, "protocol.toml", "study.toml", "pairs.csv");

    private static StudyCopy Empty()
    {
        var copy = new StudyCopy(
            Directory.CreateTempSubdirectory("stability-study-test-").FullName
        );
        Directory.CreateDirectory(copy.Study);
        return copy;
    }

    public static StudyCopy Create()
    {
        var copy = Empty();
        foreach (var (name, bytes) in ExampleStudy.Bytes.Files)
        {
            File.WriteAllBytes(Path.Combine(copy.Study, name), bytes.Span);
        }

        return copy;
    }

    /// <summary>A folder that is kept until all tests have run.</summary>
    public static StudyCopy UntilAllHaveRun(StudyCopy copy)
    {
        AppDomain.CurrentDomain.ProcessExit += (_, _) => copy.Dispose();
        return copy;
    }

    /// <summary>A copy whose protocol is locked, as the example's is.</summary>
    public static StudyCopy CreateLocked()
    {
        var copy = Create();
        File.Copy(
            Path.Combine(ExampleStudy.Folder, "protocol.lock"),
            Path.Combine(copy.Study, "protocol.lock")
        );
        return copy;
    }

    /// <summary>A copy of all that lies in the folder now.</summary>
    public StudyCopy Again()
    {
        var copy = Empty();
        foreach (var file in Files())
        {
            Directory.CreateDirectory(Path.GetDirectoryName(copy.At(file))!);
            File.Copy(At(file), copy.At(file));
        }

        return copy;
    }

    public string At(params string[] parts) => Path.Combine([Root, .. parts]);

    public void Edit(string name, string from, string to)
    {
        var path = Path.Combine(Study, name);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }

    /// <summary>Every file below the folder, by its path from there.</summary>
    public string[] Files() =>
        [
            .. Directory
                .EnumerateFiles(Root, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
