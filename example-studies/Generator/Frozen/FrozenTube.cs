namespace ExampleStudies.Generator.Frozen;

/// <summary>A portion of one plasma with its history and its true values.</summary>
internal sealed record FrozenTube(
    int Number,
    FrozenPortion Portion,
    DateTimeOffset CollectedAt,
    DateTimeOffset ReceivedAt,
    DateTimeOffset SpunAt,
    DateTimeOffset SeparatedAt,
    DateTimeOffset? FrozenAt,
    DateTimeOffset? ThawedAt,
    DateTimeOffset TestedAt,
    double ApttSeconds,
    double FactorVIII,
    int HematocritPercent,
    bool Lost
)
{
    /// <summary>Code of the draw.</summary>
    public string Specimen => string.Create(CultureInfo.InvariantCulture, $"F-{Number:000}");

    /// <summary>Code of the portion, such as F-017-B.</summary>
    public string Code => $"{Specimen}-{Portion.Letter}";

    /// <summary>Code of the run: a run for each collection day and time point.</summary>
    public string Run =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{CollectedAt:yyyy-MM-dd}-{Portion.RunSuffix}"
        );
}

/// <summary>Draws, spins, freezes and thaws; writes specimens.csv.</summary>
internal static class FrozenTubes
{
    /// <summary>The thawing of this portion was not written down, so that nobody knows how long it stood thawed.</summary>
    private const string NotRecorded = "F-027-B";

    /// <summary>The vial of this portion cracked in the freezer.</summary>
    private const string Cracked = "F-033-C";

    /// <summary>All portions, draw by draw.</summary>
    public static ImmutableArray<FrozenTube> Collect() =>
        [
            .. FrozenScenario.Days.SelectMany(
                (day, dayIndex) =>
                    Enumerable
                        .Range(1, FrozenScenario.PerDay)
                        .SelectMany(place =>
                            Collect((dayIndex * FrozenScenario.PerDay) + place, day, place)
                        )
            ),
        ];

    /// <summary>The content of specimens.csv: a row a portion.</summary>
    public static string ToCsv(ImmutableArray<FrozenTube> tubes) =>
        CsvFile.Write(
            Specimens.Header,
            tubes.Select(tube =>
                (ImmutableArray<string>)
                    [
                        tube.Specimen,
                        tube.Code,
                        string.Create(CultureInfo.InvariantCulture, $"S{tube.Number:000}"),
                        "none",
                        "frozen-20",
                        "1",
                        CsvFile.Time(tube.CollectedAt),
                        CsvFile.Time(tube.ReceivedAt),
                        CsvFile.Time(tube.SpunAt),
                        CsvFile.Time(tube.SeparatedAt),
                        tube.FrozenAt is { } frozen ? CsvFile.Time(frozen) : "",
                        tube.ThawedAt is { } thawed ? CsvFile.Time(thawed) : "",
                        "98",
                        "4",
                        tube.HematocritPercent.ToString(CultureInfo.InvariantCulture),
                        "none",
                        "no",
                        "straight needle",
                        "native",
                    ]
            )
        );

    private static IEnumerable<FrozenTube> Collect(int number, DateTimeOffset day, int place)
    {
        var random = SeededRandom.For(
            string.Create(CultureInfo.InvariantCulture, $"{FrozenScenario.Study} draw {number}")
        );
        var collectedAt = day.AddHours(8).AddMinutes((11 * place) + random.Whole(0, 5));
        var receivedAt = collectedAt.AddMinutes(random.Whole(6, 15));
        var spunAt = receivedAt.AddMinutes(random.Whole(5, 15));
        var separatedAt = spunAt.AddMinutes(random.Whole(28, 35));
        var aptt = Math.Clamp(31 * Math.Exp(0.10 * random.Normal()), 25, 46);
        var factor = 120 * Math.Exp(0.3 * random.Normal());
        var hematocrit = (int)Math.Round(Math.Clamp(40 + (4.5 * random.Normal()), 24, 52));
        return FrozenScenario.Portions.Select(portion =>
        {
            var own = SeededRandom.For(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{FrozenScenario.Study} portion {number}-{portion.Letter}"
                )
            );
            var isFrozen = portion.Days > 0;
            var thawedAt = day.AddDays(portion.Days).AddHours(13).AddMinutes(own.Whole(0, 20));
            var rise =
                FrozenScenario.ApttPercentOnThawing
                + (FrozenScenario.ApttPercentPerDay * portion.Days)
                + (FrozenScenario.ApttSpreadPercent * own.Normal());
            var loss =
                FrozenScenario.FactorVIIIPercentOnThawing
                + (FrozenScenario.FactorVIIIPercentPerDay * portion.Days)
                + (FrozenScenario.FactorVIIISpreadPercent * own.Normal());
            var tube = new FrozenTube(
                number,
                portion,
                collectedAt,
                receivedAt,
                spunAt,
                separatedAt,
                isFrozen ? separatedAt.AddMinutes(own.Whole(5, 15)) : null,
                isFrozen ? thawedAt : null,
                isFrozen
                    ? thawedAt.AddMinutes(own.Whole(12, 35))
                    : separatedAt.AddMinutes(own.Whole(8, 20)),
                isFrozen ? aptt * (1 + (rise / 100)) : aptt,
                isFrozen ? factor * (1 - (loss / 100)) : factor,
                hematocrit,
                Lost: false
            );
            return tube.Code switch
            {
                NotRecorded => tube with { ThawedAt = null },
                Cracked => tube with { Lost = true },
                _ => tube,
            };
        });
    }
}
