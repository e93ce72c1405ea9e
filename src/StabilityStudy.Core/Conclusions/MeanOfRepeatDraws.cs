using System.Collections.Immutable;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// The mean change with an interval that also spans the one over persons when a person gave more than one specimen: two
/// draws of one person are not two persons.
/// </summary>
internal static class MeanOfRepeatDraws
{
    /// <summary>The interval over persons is the widest one.</summary>
    public const string Subjects = "subjects";

    public static Estimate<ClusteredMeanInterval> WithInterval(
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
        if (!RepeatsPersons(person) || !byDay.TryGet(out var interval))
        {
            return byDay;
        }

        if (OverPersons(changes, data, confidenceLevel) is not { } byPerson)
        {
            return Estimate.Refused<ClusteredMeanInterval>(
                AssumptionCode.TooFewValues,
                "All specimens are of one person."
            );
        }

        var widest = byPerson.Upper - byPerson.Lower > interval.Upper - interval.Lower;
        var spanning = interval with
        {
            Lower = Math.Min(interval.Lower, byPerson.Lower),
            Upper = Math.Max(interval.Upper, byPerson.Upper),
        };
        return new Estimate<ClusteredMeanInterval>(
            widest
                ? spanning with
                {
                    StandardError = byPerson.StandardError,
                    DegreesOfFreedom = byPerson.DegreesOfFreedom,
                    DecidedBy = Subjects,
                }
                : spanning,
            null,
            byDay.Notes
        );
    }

    /// <summary>The mean of the persons' means with its interval; null when every specimen is of a person of its own, or all are of one.</summary>
    public static MeanInterval? OverPersons(
        ImmutableArray<double> changes,
        CellData data,
        double confidenceLevel
    )
    {
        var person = PersonNumbers(data);
        return
            RepeatsPersons(person)
            && ClusteredMean
                .WithInterval(changes.AsSpan(), person.AsSpan(), confidenceLevel)
                .TryGet(out var mean)
            && mean.ByCluster.TryGet(out var persons)
            ? persons
            : null;
    }

    private static bool RepeatsPersons(ImmutableArray<int> person) =>
        person.Distinct().Count() < person.Length;

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
