using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>
/// The mean change with an interval that also spans the one over persons when a person gave more than one specimen: two
/// draws of one person are not two persons.
/// </summary>
/// <param name="Interval">The mean with its interval.</param>
/// <param name="Persons">The mean of the persons' means with its interval; null when every specimen is of a person of its own.</param>
internal sealed record MeanOfRepeatDraws(
    Estimate<ClusteredMeanInterval> Interval,
    MeanInterval? Persons
)
{
    public static MeanOfRepeatDraws Of(
        ImmutableArray<double> changes,
        CellData data,
        double confidenceLevel
    )
    {
        var byDay = ClusteredMean.WithInterval(
            changes.AsSpan(),
            data.Day.AsSpan(),
            confidenceLevel
        );
        var person = PersonNumbers(data);
        if (person.Distinct().Count() == person.Length || !byDay.TryGet(out var interval))
        {
            return new(byDay, null);
        }

        var overPersons = ClusteredMean.WithInterval(
            changes.AsSpan(),
            person.AsSpan(),
            confidenceLevel
        );
        return overPersons.TryGet(out var mean) && mean.ByCluster.TryGet(out var persons)
            ? new(
                new Estimate<ClusteredMeanInterval>(Spanning(interval, persons), null, byDay.Notes),
                persons
            )
            : new(Estimate.Refused<ClusteredMeanInterval>(Refusal.OnePerson), null);
    }

    private static ClusteredMeanInterval Spanning(
        ClusteredMeanInterval interval,
        MeanInterval persons
    )
    {
        var spanning = interval with
        {
            Lower = Math.Min(interval.Lower, persons.Lower),
            Upper = Math.Max(interval.Upper, persons.Upper),
        };
        return persons.Upper - persons.Lower > interval.Upper - interval.Lower
            ? spanning with
            {
                StandardError = persons.StandardError,
                DegreesOfFreedom = persons.DegreesOfFreedom,
                DecidedBy = WidestInterval.Subjects,
            }
            : spanning;
    }

    private static ImmutableArray<int> PersonNumbers(CellData data)
    {
        var numbers = data
            .Compared.Select(pair => pair.Subject)
            .Distinct()
            .Select((subject, number) => (subject, number))
            .ToDictionary(item => item.subject, item => item.number);
        return [.. data.Compared.Select(pair => numbers[pair.Subject])];
    }
}
