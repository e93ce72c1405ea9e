using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>What would raise the chance of the first time point that is open or worse with all of its expected change.</summary>
public static class PlanAlternatives
{
    /// <summary>Most specimens that are tried.</summary>
    public const int MostSpecimens = 200;

    private static readonly ImmutableArray<double> s_factors = [1.5, 2, 2.5];

    /// <summary>Numbers that are tried: the steps at which a share of 85 or 90 % allows one more to fail, and numbers between and beyond.</summary>
    private static readonly ImmutableArray<int> s_ladder =
    [
        20,
        25,
        30,
        35,
        40,
        46,
        50,
        55,
        59,
        61,
        70,
        76,
        80,
        89,
        100,
        110,
        120,
        130,
        140,
        150,
        160,
        175,
        MostSpecimens,
    ];

    internal static PlanDetail? Of(
        StudyProtocol protocol,
        ImmutableArray<PlannedRow> rows,
        int days,
        PlanRequest request
    )
    {
        var open = rows.SelectMany(row => row.TimePoints.Select(point => (Row: row, Point: point)))
            .Where(item =>
                item.Point.WithAll?.Together.Probability
                < ChancesOfSupport.From(ChanceOfSupport.Likely)
            )
            .ToImmutableArray();
        if (open.IsEmpty)
        {
            return null;
        }

        var (row, point) = open.FirstOrDefault(
            item =>
                item.Point.WithAll!.Together.Probability
                >= ChancesOfSupport.From(ChanceOfSupport.Unlikely),
            open[0]
        );
        var context = new CellContext(
            protocol,
            row.Analyte,
            row.Group,
            row.Storage,
            point.TimePoint,
            []
        );
        // Half as many studies: what is compared here need not be known as well, and larger studies take longer.
        var number = (request with { Studies = (request.Studies + 1) / 2 }).Number;
        CharacteristicPoint Chance(CellContext at, int specimens, int onDays, StudyNumber number) =>
            CellChances.Together(
                point.Expected.Percent!.Value,
                at,
                Supposed(at, specimens, onDays),
                number,
                request.Seed
            );
        SupposedResults Supposed(CellContext at, int specimens, int onDays) =>
            SupposedFromPlan
                .Of(at, specimens, onDays, point.Expected.SpecimenSdPercent, out _)!
                .Results;
        var tried = new Dictionary<int, double>();
        return new(
            new(row.Analyte.Id, row.Group.Id, row.Storage.Id, point.TimePoint),
            CellChances.At(
                1,
                point.Expected.Percent!.Value,
                context,
                Supposed(context, row.Specimens, days),
                request with
                {
                    ByCriterion = true,
                }
            ),
            [
                .. Tried(context, row.Specimens, days)
                    .Where(item => item.Specimens <= SupposedFromPlan.MostSpecimens)
                    .Select(item => new PlanAlternative(
                        item.What,
                        item.Specimens,
                        item.Days,
                        Chance(item.Context, item.Specimens, item.Days, number)
                    )),
            ],
            Smallest(ChancesOfSupport.From(ChanceOfSupport.Likely)),
            Smallest(0.90)
        );

        // Chances rise from step to step but for the sawtooth of a share, so that a halving of the ladder finds a step at which the chance is reached and at the one before it is not.
        int? Smallest(double wanted)
        {
            bool Reaches(int specimens)
            {
                if (!tried.TryGetValue(specimens, out var chance))
                {
                    chance = Chance(
                        context,
                        specimens,
                        DaysOf(specimens),
                        request.Number
                    ).Probability;
                    tried.Add(specimens, chance);
                }

                return chance >= wanted;
            }

            var (low, high) = (0, s_ladder.Length);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = Reaches(s_ladder[middle]) ? (low, middle) : (middle + 1, high);
            }

            return low < s_ladder.Length ? s_ladder[low] : null;
        }

        int DaysOf(int specimens) =>
            Math.Max(
                Math.Min(protocol.MinimumDays, specimens),
                (int)Math.Round((double)days * specimens / row.Specimens)
            );
    }

    private static IEnumerable<(
        AlternativeKind What,
        CellContext Context,
        int Specimens,
        int Days
    )> Tried(CellContext context, int specimens, int days)
    {
        foreach (var factor in s_factors)
        {
            yield return (
                AlternativeKind.Numbers,
                context,
                (int)Math.Round(factor * specimens),
                (int)Math.Round(factor * days)
            );
        }

        if (2 * days <= specimens)
        {
            yield return (AlternativeKind.Numbers, context, specimens, 2 * days);
        }

        if (days / 2 is var fewer && fewer >= context.Protocol.MinimumDays)
        {
            yield return (AlternativeKind.Numbers, context, specimens, fewer);
        }

        if (context.Protocol.Replicates == 1)
        {
            yield return (
                AlternativeKind.Duplicates,
                context with
                {
                    Protocol = context.Protocol with { Replicates = 2 },
                },
                specimens,
                days
            );
        }

        yield return (
            AlternativeKind.OneMoreDecimal,
            context with
            {
                Analyte = context.Analyte with { Decimals = context.Analyte.Decimals + 1 },
            },
            specimens,
            days
        );
    }
}
