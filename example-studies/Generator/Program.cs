using System.Collections.Immutable;
using System.Text;
using ExampleStudies.Generator;

// Rewrites the example study from its seed; with --check writes nothing and tells by exit code 1 that a file differs.
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

ImmutableArray<Tube> tubes =
[
    .. Patients
        .Invent()
        .SelectMany(patient => Specimens.Collect(patient))
        .Select(Imperfections.Disturb),
];
var protocol = Path.Combine(root.FullName, "protocols", "aptt-whole-blood-room-temperature.toml");
(string Name, byte[] Content)[] files =
[
    ("protocol.toml", File.ReadAllBytes(protocol)),
    ("specimens.csv", Encoding.UTF8.GetBytes(Specimens.ToCsv(tubes))),
    ("results.csv", Encoding.UTF8.GetBytes(Results.ToCsv(tubes))),
    ("controls.csv", Encoding.UTF8.GetBytes(Results.ControlsToCsv(tubes))),
];

var differing = 0;
foreach (var (name, content) in files)
{
    var path = Path.Combine(root.FullName, "example-studies", "aptt-room-temperature", name);
    var same = File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(content);
    if (!same)
    {
        differing++;
    }

    if (!same && !check)
    {
        File.WriteAllBytes(path, content);
    }

    Console.WriteLine($"{name}: {(same ? "unchanged" : check ? "differs" : "written")}");
}

return check && differing > 0 ? 1 : 0;
