using System.Text;
using ExampleStudies.Generator.Frozen;
using ExampleStudies.Generator.Routine;
using ExampleStudies.Generator.Sheet;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Locking;

namespace ExampleStudies.Generator;

/// <summary>An example study: its folder, which holds its protocol, when that was locked, and its generated files.</summary>
/// <param name="Folder">Folder of the example.</param>
/// <param name="LockedAt">When it was locked.</param>
/// <param name="Files">The generated files.</param>
internal sealed record Example(
    string Folder,
    DateTimeOffset LockedAt,
    ImmutableArray<(string Name, string Text)> Files
)
{
    /// <summary>Makes every example.</summary>
    public static ImmutableArray<Example> All() => [Aptt(), Routine(), FrozenPlasma(), Paired()];

    /// <summary>Every generated file of the folder with its bytes.</summary>
    /// <param name="root">Folder of the repository.</param>
    public IEnumerable<(string Name, byte[] Content)> Contents(string root)
    {
        var protocol = File.ReadAllBytes(
            Path.Combine(root, "example-studies", Folder, "protocol.toml")
        );
        return
        [
            (LockFile.Name, LockOf(protocol)),
            (LockFile.CopyName(1), protocol),
            .. Files.Select(file => (file.Name, Encoding.UTF8.GetBytes(file.Text))),
        ];
    }

    private byte[] LockOf(byte[] protocol) =>
        LockFile
            .With(
                StoredLocks.None,
                new StoredLock(
                    new ProtocolLock(1, InputDigest.Sha256(protocol), LockedAt, "LS1", null),
                    null,
                    [],
                    []
                )
            )
            .ToArray();

    /// <summary>A local time in an invented laboratory west of Greenwich.</summary>
    private static DateTimeOffset At(int year, int month, int day, int hour, int west) =>
        new(year, month, day, hour, 20, 0, TimeSpan.FromHours(-west));

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
            At(2026, 2, 27, 15, west: 5),
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
            At(2026, 4, 10, 14, west: 4),
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
            At(2026, 1, 9, 11, west: 5),
            [
                ("specimens.csv", FrozenTubes.ToCsv(tubes)),
                ("results.csv", FrozenResults.ToCsv(tubes)),
                ("controls.csv", FrozenResults.ControlsToCsv(tubes)),
            ]
        );
    }

    private static Example Paired() =>
        new(
            "small-paired-sheet",
            At(2026, 5, 1, 13, west: 5),
            [("pairs.csv", PairedSheet.ToCsv())]
        );
}
