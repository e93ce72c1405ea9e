using System.Collections.Immutable;
using System.Text;
using ExampleStudies.Generator.Frozen;
using ExampleStudies.Generator.Routine;
using ExampleStudies.Generator.Sheet;

namespace ExampleStudies.Generator;

/// <summary>An example study: its folder, the ready protocol it copies, and its generated files.</summary>
internal sealed record Example(
    string Folder,
    string Protocol,
    ImmutableArray<(string Name, string Text)> Files
)
{
    /// <summary>Makes every example.</summary>
    public static ImmutableArray<Example> All() => [Aptt(), Routine(), FrozenPlasma(), Paired()];

    /// <summary>Every generated file of the folder with its bytes.</summary>
    /// <param name="root">Folder of the repository.</param>
    public IEnumerable<(string Name, byte[] Content)> Contents(string root) =>
        [
            ("protocol.toml", File.ReadAllBytes(Path.Combine(root, "protocols", Protocol))),
            .. Files.Select(file => (file.Name, Encoding.UTF8.GetBytes(file.Text))),
        ];

    private static Example Aptt()
    {
        ImmutableArray<Tube> tubes =
        [
            .. Patients
                .Invent()
                .SelectMany(patient => Specimens.Collect(patient))
                .Select(Imperfections.Disturb),
        ];
        return new Example(
            "aptt-room-temperature",
            "aptt-whole-blood-room-temperature.toml",
            [
                ("specimens.csv", Specimens.ToCsv(tubes)),
                ("results.csv", Results.ToCsv(tubes)),
                ("controls.csv", Results.ControlsToCsv(tubes)),
            ]
        );
    }

    private static Example Routine()
    {
        ImmutableArray<RoutineTube> tubes =
        [
            .. RoutinePersons.Invent().SelectMany(RoutineTubes.Collect),
        ];
        return new Example(
            "routine-room-temperature",
            "routine-coagulation-room-temperature.toml",
            [
                ("specimens.csv", RoutineTubes.ToCsv(tubes)),
                ("results.csv", RoutineResults.ToCsv(tubes)),
                ("controls.csv", RoutineResults.ControlsToCsv(tubes)),
            ]
        );
    }

    private static Example FrozenPlasma()
    {
        var tubes = FrozenTubes.Collect();
        return new Example(
            "frozen-plasma",
            "frozen-plasma.toml",
            [
                ("specimens.csv", FrozenTubes.ToCsv(tubes)),
                ("results.csv", FrozenResults.ToCsv(tubes)),
                ("controls.csv", FrozenResults.ControlsToCsv(tubes)),
            ]
        );
    }

    private static Example Paired() =>
        new("small-paired-sheet", "small-paired-sheet.toml", [("pairs.csv", PairedSheet.ToCsv())]);
}
