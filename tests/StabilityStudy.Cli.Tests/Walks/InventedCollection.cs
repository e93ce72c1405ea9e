using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>Collects what a protocol plans as its printed worksheets say: the specimens of each day, each tube spun, frozen, thawed and tested within its times.</summary>
internal static class InventedCollection
{
    private static readonly TimeZoneInfo s_zone = TimeZoneInfo.FindSystemTimeZoneById(
        WalkedStudy.TimeZone
    );

    /// <summary>How long the facility's plasma lies frozen before the time after thawing is studied.</summary>
    private const int DaysFrozenBefore = 14;

    /// <summary>All tubes, in the order of collection.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="first">First day of collection, a Monday.</param>
    /// <param name="seed">Seed of everything that varies.</param>
    public static ImmutableArray<InventedTube> Of(
        StudyProtocol protocol,
        DateOnly first,
        int seed
    ) =>
        [
            .. Enumerable
                .Range(1, SpecimenCode.DaysOf(protocol))
                .SelectMany(day => OfDay(protocol, day, Workday(first, day), seed)),
        ];

    /// <summary>Monday to Friday, week after week.</summary>
    private static DateOnly Workday(DateOnly first, int day) =>
        first.AddDays(((day - 1) / 5 * 7) + ((day - 1) % 5));

    private static IEnumerable<InventedTube> OfDay(
        StudyProtocol protocol,
        int day,
        DateOnly date,
        int seed
    )
    {
        var specimens = DrawPlan.Of(
            protocol,
            SpecimenCode.OfDay(protocol, day, []),
            seed: 1,
            withSpare: true
        );

        // Baselines follow one another on the analyzer; where many specimens come, two draw them.
        var apart = specimens.Length <= 8 ? 7 : 4;
        return specimens.SelectMany(
            (specimen, place) =>
                OfSpecimen(
                    protocol,
                    specimen,
                    day,
                    At(date, TimeSpan.FromMinutes(450 + (apart * place))),
                    SeededValues.Of(seed, "times " + specimen.Code)
                )
        );
    }

    private static DateTimeOffset At(DateOnly date, TimeSpan time)
    {
        var local = date.ToDateTime(TimeOnly.FromTimeSpan(time));
        return new(local, s_zone.GetUtcOffset(local));
    }

    private static IEnumerable<InventedTube> OfSpecimen(
        StudyProtocol protocol,
        BenchSpecimen specimen,
        int day,
        DateTimeOffset collected,
        SeededValues random
    )
    {
        // All that one specimen shares: it is spun and divided once where portions of its plasma wait.
        var soon = specimen.Group.BaselineSpunWithin ?? protocol.BaselineWithin;
        var soonest = Math.Min(10, soon.TotalMinutes / 4);
        var spun =
            collected
            + random.Minutes(soonest, Math.Min(25, Math.Max(soonest, soon.TotalMinutes - 18)));
        var separated = spun + random.Minutes(16, 20);
        var frozen = separated + random.Minutes(20, 35);
        return specimen.Tubes.Select(plan =>
            protocol.TimeOrigin == TimeOrigin.Thawing ? Thawed(plan)
            : plan.Occasion.IsBaseline ? Baseline(plan)
            : Delayed(plan)
        );

        InventedTube Baseline(BenchTube plan)
        {
            var tested =
                collected
                + random.Minutes(
                    0.75 * protocol.BaselineWithin.TotalMinutes,
                    0.95 * protocol.BaselineWithin.TotalMinutes
                );
            var storage = protocol.Storages[0];
            return Tube(
                plan,
                storage,
                storage.State == StorageState.WholeBlood ? tested - random.Minutes(12, 14) : spun,
                storage.State == StorageState.SeparatedPlasma ? separated : null,
                null,
                null,
                tested
            );
        }

        InventedTube Delayed(BenchTube plan)
        {
            var storage = plan.Storage!;
            var tested = collected + Within(plan);
            if (storage.State == StorageState.WholeBlood)
            {
                var latest = storage.SpinToTest!.Value.TotalMinutes;
                return Tube(
                    plan,
                    storage,
                    tested - random.Minutes(0.55 * latest, 0.8 * latest),
                    null,
                    null,
                    null,
                    tested
                );
            }

            var isFrozen = storage.HighestCelsius < 0;
            return Tube(
                plan,
                storage,
                spun,
                storage.State == StorageState.SeparatedPlasma ? separated : null,
                isFrozen ? frozen : null,
                isFrozen ? tested - random.Minutes(15, 40) : null,
                tested
            );
        }

        InventedTube Thawed(BenchTube plan)
        {
            var thawed = At(DateOnly.FromDateTime(collected.DateTime), collected.TimeOfDay)
                .AddDays(DaysFrozenBefore);
            thawed = new(thawed.DateTime, s_zone.GetUtcOffset(thawed.DateTime));
            return Tube(
                plan,
                plan.Storage ?? protocol.Storages[0],
                spun,
                separated,
                frozen,
                thawed,
                thawed + (plan.Occasion.IsBaseline ? random.Minutes(8, 14) : Within(plan))
            );
        }

        TimeSpan Within(BenchTube plan)
        {
            var span = (plan.Latest - plan.Earliest).TotalMinutes;
            return plan.Earliest
                + random.Minutes(Math.Min(0.1 * span, 6), Math.Min(0.9 * span, 60));
        }

        InventedTube Tube(
            BenchTube plan,
            Storage storage,
            DateTimeOffset spunAt,
            DateTimeOffset? separatedAt,
            DateTimeOffset? frozenAt,
            DateTimeOffset? thawedAt,
            DateTimeOffset testedAt
        ) =>
            new(
                specimen,
                plan,
                storage,
                day,
                collected,
                spunAt,
                separatedAt,
                frozenAt,
                thawedAt,
                testedAt,
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"D{day:00}-{(plan.Occasion.IsBaseline ? "0" : storage.Id + "-" + plan.Occasion).Replace(" ", "", StringComparison.Ordinal)}"
                )
            );
    }
}
