namespace ExampleStudies.Generator;

/// <summary>An invented person with one draw, and the truth about it that no laboratory would know.</summary>
/// <param name="Specimen">Code of the draw, such as N-017.</param>
/// <param name="Subject">Study code of the person, such as S033.</param>
/// <param name="OnHeparin">Whether the person is on unfractionated heparin, else on no anticoagulant.</param>
/// <param name="Number">Running number within the group, from 1.</param>
/// <param name="CollectedAt">Time of the draw.</param>
/// <param name="NativeSeconds">True aPTT at collection without the heparin effect, in seconds.</param>
/// <param name="HeparinLogRatio">ln(aPTT with heparin / aPTT without) at collection; 0 without heparin.</param>
/// <param name="DriftPercent">This person's rise in percent per unit of ln(1 + t/1 h).</param>
/// <param name="NeutralizedShare">Share of the heparin effect that is lost in the long run.</param>
internal sealed record Patient(
    string Specimen,
    string Subject,
    bool OnHeparin,
    int Number,
    DateTimeOffset CollectedAt,
    double NativeSeconds,
    double HeparinLogRatio,
    double DriftPercent,
    double NeutralizedShare
)
{
    /// <summary>Group code of the protocol.</summary>
    public string Group => OnHeparin ? "ufh" : "none";

    /// <summary>True aPTT in seconds after the whole blood has waited this many hours since collection.</summary>
    public double SecondsAfter(double hours)
    {
        var late = Math.Max(0, hours - Scenario.LateDriftFromHours);
        var risePercent =
            (DriftPercent * Math.Log(1 + hours)) + (Scenario.LateDriftPercentPerHour * late);
        var lost = NeutralizedShare * (1 - Math.Exp(-hours / Scenario.NeutralizationHours));
        return NativeSeconds * (1 + (risePercent / 100)) * Math.Exp(HeparinLogRatio * (1 - lost));
    }
}

/// <summary>Invents the patients in the order in which they were drawn.</summary>
internal static class Patients
{
    /// <summary>Eleven draws a day, on the last day twelve, from seven in the morning: the two groups in turn, then the rest on heparin.</summary>
    public static ImmutableArray<Patient> Invent()
    {
        var patients = ImmutableArray.CreateBuilder<Patient>();
        for (var day = 0; day < Scenario.Days.Length; day++)
        {
            for (var place = 0; place < Scenario.CountOn(day, onHeparin: true); place++)
            {
                if (place < Scenario.CountOn(day, onHeparin: false))
                {
                    var number = (day * Scenario.PerDay) + place + 1;
                    patients.Add(Invent(onHeparin: false, number, day, 2 * place));
                }

                patients.Add(
                    Invent(
                        onHeparin: true,
                        (day * Scenario.OnHeparinPerDay) + place + 1,
                        day,
                        (2 * place) + 1
                    )
                );
            }
        }

        return patients.ToImmutable();
    }

    private static Patient Invent(bool onHeparin, int number, int day, int turn)
    {
        var specimen = string.Create(
            CultureInfo.InvariantCulture,
            $"{(onHeparin ? 'H' : 'N')}-{number:000}"
        );
        var random = SeededRandom.For("patient " + specimen);
        var collectedAt = Scenario
            .Days[day]
            .AddHours(7)
            .AddMinutes((9 * turn) + random.Whole(0, 5));
        var native = Math.Clamp(
            LogNormal(random, Scenario.OrdinarySeconds, Scenario.OrdinarySpread),
            25,
            44
        );
        var prolonged = random.Uniform(46, 70);
        var heparin = Math.Clamp(
            LogNormal(random, Scenario.HeparinSeconds, Scenario.HeparinSpread),
            48,
            106
        );
        if (!onHeparin && number % Scenario.ProlongedEvery == Scenario.ProlongedEvery / 2)
        {
            native = prolonged;
        }

        return new Patient(
            specimen,
            string.Create(
                CultureInfo.InvariantCulture,
                $"S{(2 * number) - (onHeparin ? 0 : 1):000}"
            ),
            onHeparin,
            number,
            collectedAt,
            native,
            onHeparin ? Math.Log(heparin / native) : 0,
            Scenario.DriftPercent + (Scenario.DriftPercentSpread * random.Normal()),
            Math.Clamp(
                Scenario.NeutralizedShare + (Scenario.NeutralizedShareSpread * random.Normal()),
                0.05,
                0.55
            )
        );
    }

    private static double LogNormal(SeededRandom random, double median, double spread) =>
        median * Math.Exp(spread * random.Normal());
}
