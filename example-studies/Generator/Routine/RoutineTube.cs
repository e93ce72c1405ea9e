namespace ExampleStudies.Generator.Routine;

/// <summary>One tube of a draw with what was written down about it.</summary>
internal sealed record RoutineTube(
    RoutinePerson Person,
    RoutinePlannedTube Plan,
    int DrawPosition,
    DateTimeOffset ReceivedAt,
    DateTimeOffset SpunAt,
    DateTimeOffset TestedAt,
    int FillPercent,
    int Inversions,
    int HematocritPercent,
    bool Clotted
)
{
    /// <summary>Code of the tube, such as N-017-B.</summary>
    public string Code => $"{Person.Clotting.Specimen}-{Plan.Letter}";

    /// <summary>Code of the run in which it is tested: a run for each collection day and time point.</summary>
    public string Run =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Person.Clotting.CollectedAt:yyyy-MM-dd}-{Plan.RunSuffix}"
        );

    /// <summary>Hours from collection to test.</summary>
    public double HoursToTest => (TestedAt - Person.Clotting.CollectedAt).TotalHours;
}

/// <summary>Draws, transports and spins the tubes, and writes specimens.csv.</summary>
internal static class RoutineTubes
{
    /// <summary>The tubes of one person; times in whole minutes.</summary>
    public static IEnumerable<RoutineTube> Collect(RoutinePerson person)
    {
        var patient = person.Clotting;
        var draw = SeededRandom.For($"{RoutineScenario.Study} draw {patient.Specimen}");
        var receivedAt = patient.CollectedAt.AddMinutes(draw.Whole(5, 12));
        var hematocrit = (int)Math.Round(Math.Clamp(39 + (4.5 * draw.Normal()), 24, 52));
        return person.Group.Tubes.Select(
            (plan, index) =>
            {
                var random = SeededRandom.For(
                    $"{RoutineScenario.Study} tube {patient.Specimen}-{plan.Letter}"
                );
                var spinToTest = random.Whole(22, 32);
                var testedAt =
                    plan.Hours == 0
                        ? receivedAt.AddMinutes(random.Whole(2, 6) + spinToTest)
                        : patient.CollectedAt.AddHours(plan.Hours).AddMinutes(random.Whole(2, 20));
                return RoutineImperfections.Disturb(
                    new RoutineTube(
                        person,
                        plan,
                        // The tubes take turns at being drawn first, second and so on.
                        ((index + patient.Number) % person.Group.Tubes.Length) + 1,
                        receivedAt,
                        testedAt.AddMinutes(-spinToTest),
                        testedAt,
                        random.Whole(93, 100),
                        random.Whole(3, 6),
                        hematocrit,
                        Clotted: false
                    )
                );
            }
        );
    }

    /// <summary>The content of specimens.csv: a row a tube.</summary>
    public static string ToCsv(ImmutableArray<RoutineTube> tubes) =>
        CsvFile.Write(
            Specimens.Header,
            tubes.Select(tube =>
                (ImmutableArray<string>)
                    [
                        tube.Person.Clotting.Specimen,
                        tube.Code,
                        tube.Person.Clotting.Subject,
                        tube.Person.Group.Id,
                        "wb-rt",
                        tube.DrawPosition.ToString(CultureInfo.InvariantCulture),
                        CsvFile.Time(tube.Person.Clotting.CollectedAt),
                        CsvFile.Time(tube.ReceivedAt),
                        CsvFile.Time(tube.SpunAt),
                        "",
                        "",
                        "",
                        tube.FillPercent.ToString(CultureInfo.InvariantCulture),
                        tube.Inversions.ToString(CultureInfo.InvariantCulture),
                        tube.HematocritPercent.ToString(CultureInfo.InvariantCulture),
                        "none",
                        tube.Clotted ? "yes" : "no",
                        "straight needle",
                        "native",
                    ]
            )
        );
}
