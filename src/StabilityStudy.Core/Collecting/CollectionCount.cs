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
        var inQuestion = inputs
            .Tubes.Where(tube => linesInQuestion.Contains(tube.SourceRow))
            .Select(tube => tube.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var tests = new PlannedTests(inputs, asOf, inQuestion).All();
        var waiting = tests
            .Where(test => test.Occasion.IsBaseline && test.IsAwaited)
            .Select(test => test.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var baselines = Baselines(inputs);
        var specimens = inputs.Tubes.DistinctBy(tube => tube.Specimen).ToImmutableArray();
        var numbers = new PlannedNumbers(inputs.Protocol, inputs.Locks);
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
                    Unusable(baselines, group.Id, waiting)
                )
                {
                    Tests = [.. tests.Where(test => test.Group == group.Id)],
                }),
            ],
            tests,
            Ranges(inputs.Protocol, baselines),
            specimens.Count(tube => tube.CollectedAt > asOf)
        );
    }

    /// <summary>The specimens of each analyte and group with their baselines; those of several storages once.</summary>
    private static ILookup<
        (string Analyte, string Group),
        (string Specimen, BaselineFinding Found)
    > Baselines(StudyInputs inputs)
    {
        var index = new SpecimenIndex(new StudyRows(inputs));
        return PairContext
            .All(inputs)
            .AsParallel()
            .AsOrdered()
            .Select(context =>
                (
                    Key: (context.Analyte.Id, context.Group.Id),
                    Baselines: PairAssembly.Baselines(
                        index,
                        context,
                        ImmutableArray.CreateBuilder<DataQuery>()
                    )
                )
            )
            .AsEnumerable()
            .SelectMany(item =>
                item.Baselines.Draws.Zip(
                    item.Baselines.Found,
                    (draw, baseline) => (item.Key, Value: (draw.Specimen, baseline))
                )
            )
            .DistinctBy(item => (item.Key, item.Value.Specimen))
            .ToLookup(item => item.Key, item => item.Value);
    }

    /// <summary>Specimens without a valid baseline for some analyte, but for those whose baseline is awaited.</summary>
    private static int Unusable(
        ILookup<(string Analyte, string Group), (string Specimen, BaselineFinding Found)> baselines,
        string group,
        HashSet<string> waiting
    ) =>
        baselines
            .Where(item => item.Key.Group == group)
            .SelectMany(item => item)
            .Where(item =>
                item.Found.Status != PairStatus.Compared && !waiting.Contains(item.Specimen)
            )
            .Select(item => item.Specimen)
            .Distinct()
            .Count();

    private static ImmutableArray<BaselineRange> Ranges(
        StudyProtocol protocol,
        ILookup<(string Analyte, string Group), (string Specimen, BaselineFinding Found)> baselines
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
                baselines[(analyte.Id, item.Id)].Select(specimen => specimen.Found)
            ),
        ];

    private static BaselineRange Range(
        StudyProtocol protocol,
        Analyte analyte,
        string group,
        IEnumerable<BaselineFinding> specimens
    )
    {
        var values = specimens
            .Where(baseline => baseline.Status == PairStatus.Compared)
            .Select(baseline => baseline.Measurement?.Result)
            .OfType<MeasuredResult>()
            .Select(result => result.Value)
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
