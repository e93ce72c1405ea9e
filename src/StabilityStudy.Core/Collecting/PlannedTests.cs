namespace StabilityStudy.Core.Collecting;

/// <summary>The planned tests of the specimens that came, each with how it stands at a moment.</summary>
internal sealed class PlannedTests
{
    private readonly StudyInputs _inputs;
    private readonly DateTimeOffset _asOf;
    private readonly IReadOnlySet<string> _inQuestion;
    private readonly ILookup<(string Specimen, TestOccasion Occasion), ResultRow> _results;
    private readonly ILookup<string, Study.NotDrawn> _notDrawn;

    /// <param name="inputs">The study.</param>
    /// <param name="asOf">The moment.</param>
    /// <param name="inQuestion">Specimens whose times are in question.</param>
    public PlannedTests(StudyInputs inputs, DateTimeOffset asOf, IReadOnlySet<string> inQuestion)
    {
        _inputs = inputs;
        _asOf = asOf;
        _inQuestion = inQuestion;
        _results = inputs
            .Results.Where(row => !AwaitedRows.IsBlank(row))
            .ToLookup(row => (row.Specimen, row.Occasion));
        _notDrawn = NotDrawnTubes
            .Of(inputs)
            .Where(item => item.Standing == NotDrawnStanding.Counts)
            .ToLookup(item => item.Statement.Specimen, item => item.Statement);
    }

    /// <summary>The tests of every specimen, by time.</summary>
    public ImmutableArray<PlannedTest> All() =>
        [
            .. _inputs
                .Tubes.GroupBy(tube => tube.Specimen)
                .SelectMany(tubes => OfSpecimen([.. tubes.OrderBy(tube => tube.SourceRow)]))
                .OrderBy(test => test.Latest)
                .ThenBy(test => test.Specimen, StringComparer.Ordinal),
        ];

    private IEnumerable<PlannedTest> OfSpecimen(ImmutableArray<TubeRow> tubes)
    {
        var first = tubes[0];
        if (_inputs.Protocol.Groups.FirstOrDefault(item => item.Id == first.Group) is not { } group)
        {
            yield break;
        }

        var storages = tubes.Select(tube => tube.Storage).Distinct().ToImmutableArray();
        var analytes = _inputs
            .Protocol.Analytes.Where(analyte =>
                (analyte.Groups.IsEmpty || analyte.Groups.Contains(group.Id))
                && (analyte.Storages.IsEmpty || analyte.Storages.Any(storages.Contains))
            )
            .ToImmutableArray();
        if (analytes.IsEmpty)
        {
            yield break;
        }

        // Where time counts from thawing, nothing is due before a portion is thawed.
        if (StartOf(tubes) is not { } started)
        {
            yield break;
        }

        yield return Test(
            first,
            storage: null,
            default,
            [.. analytes.Select(analyte => analyte.Id)],
            (started, started + _inputs.Protocol.BaselineWithin)
        ) with
        {
            SpinBy = started + group.BaselineSpunWithin,
        };
        foreach (var storage in _inputs.Protocol.Storages.Where(item => storages.Contains(item.Id)))
        {
            foreach (var test in InStorage(tubes, started, storage, analytes))
            {
                yield return test;
            }
        }
    }

    /// <summary>From when the times of a specimen count; null where that is not recorded yet.</summary>
    private DateTimeOffset? StartOf(ImmutableArray<TubeRow> tubes) =>
        tubes.Select(_inputs.Protocol.StartOf).FirstOrDefault(start => start is not null);

    private ImmutableArray<PlannedTest> InStorage(
        ImmutableArray<TubeRow> tubes,
        DateTimeOffset started,
        Storage storage,
        ImmutableArray<Analyte> analytes
    )
    {
        var first = tubes[0];
        var planned = PlannedOccasions.Of(_inputs.Protocol, analytes, first.Group, storage.Id);
        var tests = planned
            .OrderBy(item => item.Key.Delay)
            .Select(item =>
            {
                var (earliest, latest) = TimingRules.Planned(item.Key, _inputs.Protocol);
                return Test(
                    first,
                    storage,
                    new TestOccasion(item.Key),
                    [.. item],
                    (started + earliest, started + latest),
                    tubes
                ) with
                {
                    SpinFrom = started + latest - storage.SpinToTest,
                };
            })
            .ToImmutableArray();
        return _inputs.Protocol.DelaysPerSpecimen is { } perSpecimen
            ? Assigned(tests, perSpecimen)
            : tests;
    }

    /// <summary>
    /// Where each specimen is tested at some of the time points only, a time that passed without a row is missing only
    /// when those still to come are too few; nobody states beforehand which they are, so the next ones are shown.
    /// </summary>
    private static ImmutableArray<PlannedTest> Assigned(
        ImmutableArray<PlannedTest> tests,
        int perSpecimen
    )
    {
        var left =
            perSpecimen
            - tests.Count(test =>
                test.Standing is TestStanding.Tested or TestStanding.Lost or TestStanding.NotPlanned
            );
        var awaited = tests
            .Where(test => test.IsAwaited)
            .Take(Math.Max(0, left))
            .ToImmutableArray();
        var overdue = tests
            .Where(test => test.Standing == TestStanding.Overdue)
            .TakeLast(Math.Max(0, left - awaited.Length))
            .ToImmutableArray();
        return
        [
            .. tests.Select(test =>
                test.IsOpen && !awaited.Contains(test) && !overdue.Contains(test)
                    ? test with
                    {
                        Standing = TestStanding.NotPlanned,
                    }
                    : test
            ),
        ];
    }

    private PlannedTest Test(
        TubeRow first,
        Storage? storage,
        TestOccasion occasion,
        ImmutableArray<string> analytes,
        (DateTimeOffset Earliest, DateTimeOffset Latest) time,
        ImmutableArray<TubeRow> tubes = default
    )
    {
        var ofStorage = storage is null
            ? null
            : tubes
                .Where(tube => tube.Storage == storage.Id)
                .Select(tube => tube.Tube)
                .ToHashSet(StringComparer.Ordinal);
        var rows = _results[(first.Specimen, occasion)]
            .Where(row => ofStorage is null || ofStorage.Contains(row.Tube))
            .ToLookup(row => row.Analyte);
        var without = analytes.Where(analyte => !rows[analyte].Any()).ToImmutableArray();
        return new PlannedTest(
            first.Specimen,
            first.Group,
            storage?.Id ?? "",
            occasion,
            Standing(),
            time.Earliest,
            time.Latest
        )
        {
            Analytes = without,
        };

        TestStanding Standing() =>
            without.IsEmpty
                ? analytes.Any(analyte => rows[analyte].All(row => row.Result is MissingResult))
                    ? TestStanding.Lost
                    : TestStanding.Tested
                : storage is not null && IsNotDrawn(first.Specimen, storage.Id, occasion)
                    ? TestStanding.NotPlanned
                    : _inQuestion.Contains(first.Specimen)
                        ? TestStanding.InQuestion
                        : _asOf > time.Latest
                            ? TestStanding.Overdue
                            : _asOf >= time.Earliest
                                ? TestStanding.DueNow
                                : TestStanding.DueLater;
    }

    private bool IsNotDrawn(string specimen, string storage, TestOccasion occasion) =>
        _notDrawn[specimen]
            .Any(item =>
                item.TimePoint == occasion.TimePoint && (item.Storage ?? storage) == storage
            );
}
