using ExampleStudies.Generator;

// Rewrites the example studies from their seed; with --check writes nothing and tells by exit code 1 that a file differs.
var check = args is ["--check"];
if (args.Length > 0 && !check)
{
    Console.Error.WriteLine("Usage: dotnet run --project example-studies/Generator [-- --check]");
    return 2;
}

var root = new DirectoryInfo(AppContext.BaseDirectory);
while (root is not null && !File.Exists(Path.Combine(root.FullName, "StabilityStudy.sln")))
{
    root = root.Parent;
}

if (root is null)
{
    Console.Error.WriteLine("No folder above this program holds StabilityStudy.sln.");
    return 2;
}

var differing = 0;
foreach (var example in Example.All())
{
    foreach (var (name, content) in example.Contents(root.FullName))
    {
        var path = Path.Combine(root.FullName, "example-studies", example.Folder, name);
        var same = File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(content);
        if (!same)
        {
            differing++;
        }

        if (!same && !check)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, content);
        }

        Console.WriteLine(
            $"{example.Folder}/{name}: {(same ? "unchanged" : check ? "differs" : "written")}"
        );
    }
}

return check && differing > 0 ? 1 : 0;
