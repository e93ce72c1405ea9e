namespace ExampleStudies.Generator.Routine;

/// <summary>An invented person with one draw, and the truth about it that no laboratory would know.</summary>
internal sealed record RoutinePerson(
    RoutineGroup Group,
    Patient Clotting,
    double ProthrombinSeconds,
    double ProthrombinPercentPerDay,
    double Fibrinogen,
    double FibrinogenPercentPerDay,
    double FactorVIII,
    double FactorVIIILoss,
    double DDimer,
    double DDimerPercentPerDay
)
{
    /// <summary>True value after the whole blood has waited this many hours since collection. The INR has none of its own.</summary>
    public double ValueAfter(string analyte, double hours) =>
        analyte switch
        {
            "PT" => Changed(ProthrombinSeconds, ProthrombinPercentPerDay * hours / 24),
            "aPTT" => Clotting.SecondsAfter(hours),
            "FBG" => Changed(Fibrinogen, FibrinogenPercentPerDay * hours / 24),
            "FVIII" => Changed(FactorVIII, -FactorVIIILoss * FactorVIIILossPercent(hours)),
            "DD" => Changed(DDimer, DDimerPercentPerDay * hours / 24),
            _ => throw new ArgumentOutOfRangeException(nameof(analyte), analyte, null),
        };

    private static double Changed(double value, double percent) => value * (1 + (percent / 100));

    private static double FactorVIIILossPercent(double hours) =>
        (RoutineScenario.FactorVIIIPercentPerHour * Math.Min(hours, 6))
        + (RoutineScenario.FactorVIIILatePercentPerHour * Math.Max(0, hours - 6));
}

/// <summary>Invents the persons in the order in which they were drawn.</summary>
internal static class RoutinePersons
{
    /// <summary>Fourteen draws a day, on the last day fifteen, from seven in the morning: the three groups in turn.</summary>
    public static ImmutableArray<RoutinePerson> Invent() =>
        [
            .. RoutineScenario.Days.SelectMany(
                (day, dayIndex) =>
                    RoutineScenario
                        .Groups.SelectMany(
                            (group, index) =>
                                Enumerable
                                    .Range(0, group.CountOn(dayIndex))
                                    .Select(place => (Group: group, Index: index, Place: place))
                        )
                        .OrderBy(draw => draw.Place)
                        .ThenBy(draw => draw.Index)
                        .Select(draw =>
                            Invent(
                                draw.Group,
                                (dayIndex * draw.Group.PerDay) + draw.Place + 1,
                                draw.Index,
                                day.AddHours(7)
                                    .AddMinutes(
                                        6
                                            * (
                                                (draw.Place * RoutineScenario.Groups.Length)
                                                + draw.Index
                                            )
                                    )
                            )
                        )
            ),
        ];

    private static RoutinePerson Invent(
        RoutineGroup group,
        int number,
        int groupIndex,
        DateTimeOffset earliest
    )
    {
        var specimen = string.Create(CultureInfo.InvariantCulture, $"{group.Letter}-{number:000}");
        var subject = string.Create(
            CultureInfo.InvariantCulture,
            $"S{((number - 1) * RoutineScenario.Groups.Length) + groupIndex + 1:000}"
        );
        var random = SeededRandom.For($"{RoutineScenario.Study} person {specimen}");
        var collectedAt = earliest.AddMinutes(random.Whole(0, 3));
        var onHeparin = group.Id == "ufh";
        var onAntagonist = group.Id == "vka";
        var native = Math.Clamp(
            LogNormal(random, Scenario.OrdinarySeconds, Scenario.OrdinarySpread),
            25,
            44
        );
        var heparin = Math.Clamp(
            LogNormal(random, Scenario.HeparinSeconds, Scenario.HeparinSpread),
            48,
            106
        );
        var ratio = Math.Clamp(LogNormal(random, 2.5, 0.28), 1.3, 4.6);
        var normalPt = LogNormal(random, 12.2, 0.07);
        return new RoutinePerson(
            group,
            new Patient(
                specimen,
                subject,
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
            ),
            onAntagonist
                ? RoutineScenario.MeanNormalSeconds * Math.Pow(ratio, 1 / RoutineScenario.Isi)
                : normalPt,
            onAntagonist
                ? RoutineScenario.VkaPtPercentPerDay
                    + (RoutineScenario.VkaPtPercentPerDaySpread * random.Normal())
                : RoutineScenario.PtPercentPerDay
                    + (RoutineScenario.PtPercentPerDaySpread * random.Normal()),
            LogNormal(random, 3.1, 0.25),
            RoutineScenario.FibrinogenPercentPerDay
                + (RoutineScenario.FibrinogenPercentPerDaySpread * random.Normal()),
            LogNormal(random, 125, 0.3),
            1 + (RoutineScenario.FactorVIIISpread * random.Normal()),
            LogNormal(random, 0.6, 0.8),
            RoutineScenario.DDimerPercentPerDay
                + (RoutineScenario.DDimerPercentPerDaySpread * random.Normal())
        );
    }

    private static double LogNormal(SeededRandom random, double median, double spread) =>
        median * Math.Exp(spread * random.Normal());
}
