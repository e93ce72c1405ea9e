namespace ExampleStudies.Generator;

/// <summary>One tube of a draw with what was written down about it.</summary>
internal sealed record Tube(
    Patient Patient,
    PlannedTube Plan,
    int DrawPosition,
    DateTimeOffset ReceivedAt,
    DateTimeOffset SpunAt,
    DateTimeOffset TestedAt,
    int FillPercent,
    int Inversions,
    string HematocritPercent,
    string Hemolysis,
    bool Clotted,
    string Device
)
{
    /// <summary>Code of the tube, such as N-017-B.</summary>
    public string Code => $"{Patient.Specimen}-{Plan.Letter}";

    /// <summary>Hours from collection to test.</summary>
    public double HoursToTest => (TestedAt - Patient.CollectedAt).TotalHours;
}

/// <summary>Draws, transports and spins the tubes, and writes specimens.csv.</summary>
internal static class Specimens
{
    internal static readonly ImmutableArray<string> Header =
    [
        "specimen",
        "tube",
        "subject",
        "group",
        "storage",
        "draw_position",
        "collected_at",
        "received_at",
        "spun_at",
        "separated_at",
        "frozen_at",
        "thawed_at",
        "fill_percent",
        "inversions",
        "hematocrit_percent",
        "hemolysis",
        "clot",
        "device",
        "origin",
    ];

    /// <summary>The tubes of one patient as an undisturbed study would have them; times in whole minutes.</summary>
    public static ImmutableArray<Tube> Collect(Patient patient)
    {
        var draw = SeededRandom.For("draw " + patient.Specimen);
        var receivedAt = patient.CollectedAt.AddMinutes(draw.Whole(3, 6));
        var hematocrit = Math.Clamp(
            patient.OnHeparin ? 34 + (5 * draw.Normal()) : 40 + (4.5 * draw.Normal()),
            24,
            52
        );
        var measured = draw.Uniform() < 0.85;
        var hemolysis = draw.Uniform() < 0.05 ? "slight" : "none";
        var device =
            draw.Uniform() < 0.8 ? "straight needle" : "winged set with citrate discard tube";
        return
        [
            .. Scenario
                .TubesOf(patient.OnHeparin)
                .Select(
                    (plan, index) =>
                    {
                        var random = SeededRandom.For($"tube {patient.Specimen}-{plan.Letter}");
                        // Baselines take a verified short spin.
                        var spinToTest = plan.IsBaseline
                            ? random.Whole(16, 20)
                            : random.Whole(22, 32);
                        var testedAt = plan.IsBaseline
                            ? receivedAt.AddMinutes(random.Whole(1, 3) + spinToTest)
                            : patient
                                .CollectedAt.AddHours(plan.Hours)
                                .AddMinutes(random.Whole(2, 20));
                        return new Tube(
                            patient,
                            plan,
                            // The tubes take turns at being drawn first, second, third and last.
                            ((index + patient.Number) % Scenario.TubesOf(patient.OnHeparin).Length)
                                + 1,
                            receivedAt,
                            testedAt.AddMinutes(-spinToTest),
                            testedAt,
                            random.Whole(93, 100),
                            random.Whole(3, 6),
                            measured
                                ? Math.Round(hematocrit).ToString(CultureInfo.InvariantCulture)
                                : "",
                            hemolysis,
                            Clotted: false,
                            device
                        );
                    }
                ),
        ];
    }

    /// <summary>The content of specimens.csv: a row a tube. Nothing was separated, frozen or thawed.</summary>
    public static string ToCsv(ImmutableArray<Tube> tubes) =>
        CsvFile.Write(
            Header,
            tubes.Select(tube =>
                (ImmutableArray<string>)
                    [
                        tube.Patient.Specimen,
                        tube.Code,
                        tube.Patient.Subject,
                        tube.Patient.Group,
                        "wb-rt",
                        tube.DrawPosition.ToString(CultureInfo.InvariantCulture),
                        CsvFile.Time(tube.Patient.CollectedAt),
                        CsvFile.Time(tube.ReceivedAt),
                        CsvFile.Time(tube.SpunAt),
                        "",
                        "",
                        "",
                        tube.FillPercent.ToString(CultureInfo.InvariantCulture),
                        tube.Inversions.ToString(CultureInfo.InvariantCulture),
                        tube.HematocritPercent,
                        tube.Hemolysis,
                        tube.Clotted ? "yes" : "no",
                        tube.Device,
                        "native",
                    ]
            )
        );
}
