using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Locking;

namespace StabilityStudy.Core.Collecting;

/// <summary>Counts what was planned, what came and what is due.</summary>
public static class CollectionCount
{
    /// <summary>The inventory of a study.</summary>
    /// <param name="inputs">The study, or those of its rows that can be read.</param>
    /// <param name="asOf">The moment, which the caller takes from a clock or from its user.</param>
    /// <param name="linesInQuestion">Lines of the file of tubes about which a query stops.</param>
    public static CollectionInventory Of(
        StudyInputs inputs,
        DateTimeOffset asOf,
        IReadOnlySet<int> linesInQuestion
    )
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var rows = new StudyRows(inputs);
        var index = new SpecimenIndex(rows);
        var inQuestion = inputs
            .Tubes.Where(tube => linesInQuestion.Contains(tube.SourceRow))
            .Select(tube => tube.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        return OfTests(
            rows,
            new PlannedTests(rows, asOf, inQuestion).All(),
            [
                .. PairContext
                    .All(inputs)
                    .AsParallel()
                    .AsOrdered()
                    .Select(context => BaselinesSoFar.Of(PairAssembly.Baselines(index, context))),
            ],
            asOf
        );
    }

    /// <summary>The same for a caller who has the planned tests and the baselines.</summary>
    internal static CollectionInventory OfTests(
        StudyRows rows,
        ImmutableArray<PlannedTest> tests,
        ImmutableArray<BaselinesSoFar> baselines,
        DateTimeOffset asOf
    )
    {
        var inputs = rows.Inputs;
        var waiting = tests
            .Where(test => test.Occasion.IsBaseline && test.IsAwaited)
            .Select(test => test.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var specimens = inputs.Tubes.DistinctBy(tube => tube.Specimen).ToImmutableArray();
        var numbers = new PlannedNumbers(inputs.Protocol, inputs.Locks);
        var once = baselines
            .GroupBy(item => (item.Analyte, item.Group))
            .Select(BaselinesSoFar.OfAllStorages)
            .ToImmutableArray();
        return new CollectionInventory(
            asOf,
            specimens
                .Select(tube => DateOnly.FromDateTime(tube.CollectedAt.DateTime))
                .Distinct()
                .Count(),
            inputs.Protocol.MinimumDays,
            [
                .. inputs.Protocol.Groups.Select(group => new GroupInventory(
                    group.Id,
                    group.Name,
                    numbers.SpecimensAt(group, asOf) * Math.Max(1, numbers.Instruments.Length),
                    specimens.Count(tube => tube.Group == group.Id),
                    Unusable(once.Where(item => item.Group == group.Id), waiting)
                )
                {
                    Tests = [.. tests.Where(test => test.Group == group.Id)],
                }),
            ],
            tests,
            Ranges(inputs.Protocol, once),
            specimens.Count(tube => tube.CollectedAt > asOf)
        );
    }

    /// <summary>Specimens without a valid baseline for some analyte, but for those whose baseline is awaited.</summary>
    private static int Unusable(IEnumerable<BaselinesSoFar> baselines, HashSet<string> waiting) =>
        baselines
            .SelectMany(item => item.Specimens)
            .Where(item => !item.IsValid && !waiting.Contains(item.Specimen))
            .Select(item => item.Specimen)
            .Distinct()
            .Count();

    private static ImmutableArray<BaselineRange> Ranges(
        StudyProtocol protocol,
        ImmutableArray<BaselinesSoFar> baselines
    ) =>
        [
            .. from analyte in protocol.Analytes
            where !analyte.IsQualitative
            from item in protocol.Groups
            where analyte.Groups.IsEmpty || analyte.Groups.Contains(item.Id)
            select Range(
                protocol,
                analyte,
                item.Id,
                baselines.FirstOrDefault(found =>
                    found.Analyte == analyte.Id && found.Group == item.Id
                )
            ),
        ];

    private static BaselineRange Range(
        StudyProtocol protocol,
        Analyte analyte,
        string group,
        BaselinesSoFar? baselines
    )
    {
        var values = (baselines?.Specimens ?? [])
            .Where(baseline => baseline.IsValid)
            .Select(baseline => baseline.Value)
            .OfType<decimal>()
            .ToImmutableArray();
        return new BaselineRange(
            analyte.Id,
            group,
            values.Length,
            values.IsEmpty ? null : values.Min(),
            values.IsEmpty ? null : values.Max(),
            analyte.PlannedRanges.FirstOrDefault(range => range.Group == group),
            [
                .. JudgedLevels(protocol, analyte, group)
                    .Select(level => new LevelSoFar(
                        level,
                        values.Count(value => value < level),
                        values.Count(value => value > level),
                        LevelCoverage.FewestOnEitherSide
                    )),
            ]
        );
    }

    /// <summary>The levels that a mean, a line or single specimens are judged at.</summary>
    private static IEnumerable<decimal> JudgedLevels(
        StudyProtocol protocol,
        Analyte analyte,
        string group
    ) =>
        protocol
            .Applying(analyte.Id, group)
            .Select(item => item.Criterion)
            .Where(criterion => criterion.JudgedLevels is not null)
            .SelectMany(criterion =>
                criterion.JudgedLevels is { IsEmpty: false } own ? own : analyte.DecisionLevels
            )
            .Distinct()
            .Order();
}
