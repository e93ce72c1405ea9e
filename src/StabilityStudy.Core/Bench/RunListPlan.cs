using StabilityStudy.Core.Collecting;

namespace StabilityStudy.Core.Bench;

/// <summary>Makes the run list of a day from the rows that came.</summary>
public static class RunListPlan
{
    /// <summary>The days on which the time of specimens began to count, ascending.</summary>
    public static ImmutableArray<DateOnly> DaysOf(StudyInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        return
        [
            .. inputs
                .Tubes.Select(tube => DayOf(inputs.Protocol, tube))
                .OfType<DateOnly>()
                .Distinct()
                .Order(),
        ];
    }

    /// <summary>The list of a day.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="inventory">Its planned tests.</param>
    /// <param name="day">The day.</param>
    /// <param name="seed">Seed of the run order.</param>
    public static RunList Of(
        StudyInputs inputs,
        CollectionInventory inventory,
        DateOnly day,
        int seed
    )
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(inventory);
        var protocol = inputs.Protocol;
        var specimens = inputs
            .Tubes.Where(tube => DayOf(protocol, tube) == day)
            .Select(tube => tube.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var tubes = new NamedTubes(inputs);
        var tests = inventory
            .Tests.Where(test =>
                specimens.Contains(test.Specimen)
                && !test.Occasion.IsBaseline
                && test.Standing != TestStanding.NotPlanned
                && !IsFrozen(protocol, test.Storage)
            )
            .OrderBy(test => test.Earliest)
            .ThenBy(test => test.Occasion.TimePoint?.Delay)
            .ThenBy(test => test.Storage, StringComparer.Ordinal)
            .ThenBy(test => test.Specimen, StringComparer.Ordinal)
            .ToImmutableArray();
        var ranks = tests
            .GroupBy(test => (test.Storage, test.Occasion))
            .SelectMany(run =>
            {
                var codes = run.Select(test => test.Specimen).ToImmutableArray();
                var order = RunOrder.Of(codes, run.Key.Storage, run.Key.Occasion, seed);
                return run.Select((test, i) => (test, order[i]));
            })
            .ToDictionary(item => item.test, item => item.Item2);
        var due = tests
            .Where(test => test.Standing != TestStanding.InQuestion)
            .Select(test => new DueTube(
                tubes.Waiting(test),
                test.Earliest
                    - TimingRules.Planned(test.Occasion.TimePoint ?? default, protocol).Earliest,
                test.SpinFrom,
                test.Earliest,
                test.Latest,
                ranks[test]
            ))
            .ToImmutableArray();
        return new RunList(
            day,
            Runs(due),
            [.. tests.Where(test => test.Standing == TestStanding.InQuestion).Select(tubes.Waiting)]
        );
    }

    /// <summary>Whether tubes of a storage are frozen: they have a sheet of their own.</summary>
    public static bool IsFrozen(Storage storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        return storage.HighestCelsius < 0;
    }

    private static bool IsFrozen(StudyProtocol protocol, string storage) =>
        protocol.Storages.Any(item => item.Id == storage && IsFrozen(item));

    private static DateOnly? DayOf(StudyProtocol protocol, TubeRow tube) =>
        protocol.StartOf(tube) is { } start ? DateOnly.FromDateTime(start.DateTime) : null;

    private static ImmutableArray<Run> Runs(ImmutableArray<DueTube> due)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        var begun = new HashSet<(string, TimePoint)>();
        for (var i = 0; i < due.Length; )
        {
            var (storage, timePoint) = (due[i].Waiting.Storage, due[i].Waiting.TimePoint);
            var count = due.Skip(i)
                .TakeWhile(tube =>
                    tube.Waiting.Storage == storage && tube.Waiting.TimePoint == timePoint
                )
                .Count();
            var tubes = due.Slice(i, count);
            runs.Add(
                new Run(
                    storage,
                    timePoint,
                    begun.Add((storage.Id, timePoint)),
                    tubes,
                    Loads.Of([.. tubes.Select(tube => (tube.From, tube.Until))])
                )
            );
            i += count;
        }

        return runs.ToImmutable();
    }
}
