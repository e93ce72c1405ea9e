namespace StabilityStudy.Core.Collecting;

/// <summary>The planned tests of the specimens that came, each with how it stands at a moment.</summary>
internal sealed class PlannedTests
{
    private readonly StudyRows _rows;
    private readonly StudyProtocol _protocol;
    private readonly DateTimeOffset _asOf;
    private readonly IReadOnlySet<string> _inQuestion;
    private readonly ILookup<string, Study.NotDrawn> _notDrawn;
    private readonly ILookup<(string Group, string Storage), Planned> _planned;

    /// <param name="rows">The study.</param>
    /// <param name="asOf">The moment.</param>
    /// <param name="inQuestion">Specimens whose times are in question.</param>
    public PlannedTests(StudyRows rows, DateTimeOffset asOf, IReadOnlySet<string> inQuestion)
    {
        _rows = rows;
        _protocol = rows.Inputs.Protocol;
        _asOf = asOf;
        _inQuestion = inQuestion;
        _notDrawn = NotDrawnTubes
            .Of(rows)
            .Where(item => item.Standing == NotDrawnStanding.Counts)
            .ToLookup(item => item.Statement.Specimen, item => item.Statement);
        _planned = (
            from patients in _protocol.Groups
            from storage in _protocol.Storages
            from planned in PlannedIn(patients.Id, storage.Id)
            select (Place: (patients.Id, storage.Id), planned)
        ).ToLookup(item => item.Place, item => item.planned);
    }

    /// <summary>The tests of every specimen, by time.</summary>
    public ImmutableArray<PlannedTest> All() =>
        [
            .. _rows
                .Specimens.AsParallel()
                .AsOrdered()
                .Where(specimen => !specimen.Tubes.IsEmpty)
                .Select(OfSpecimen)
                .AsEnumerable()
                .SelectMany(tests => tests)
                .OrderBy(test => test.Latest)
                .ThenBy(test => test.Specimen, StringComparer.Ordinal),
        ];

    private ImmutableArray<PlannedTest> OfSpecimen(SpecimenRows specimen)
    {
        var tubes = specimen.TubesByLine;
        var first = tubes[0];
        var group = _protocol.Groups.FirstOrDefault(item => item.Id == first.Group);
        var analytes = _protocol
            .Analytes.Where(analyte =>
                (analyte.Groups.IsEmpty || analyte.Groups.Contains(first.Group))
                && (
                    analyte.Storages.IsEmpty
                    || tubes.Any(tube => analyte.Storages.Contains(tube.Storage))
                )
            )
            .Select(analyte => analyte.Id)
            .ToImmutableArray();

        // Where time counts from thawing, nothing is due before a portion is thawed.
        if (group is null || analytes.IsEmpty || StartOf(tubes) is not { } started)
        {
            return [];
        }

        var baseline = new Planned(default, analytes, TimeSpan.Zero, _protocol.BaselineWithin);
        return
        [
            Test(specimen, first, null, baseline, started) with
            {
                SpinBy = started + group.BaselineSpunWithin,
            },
            .. _protocol
                .Storages.Where(storage => tubes.Any(tube => tube.Storage == storage.Id))
                .SelectMany(storage => InStorage(specimen, first, storage, started)),
        ];
    }

    /// <summary>From when the times of a specimen count; null where that is not recorded yet.</summary>
    private DateTimeOffset? StartOf(ImmutableArray<TubeRow> tubes) =>
        tubes.Select(_protocol.StartOf).FirstOrDefault(start => start is not null);

    private ImmutableArray<PlannedTest> InStorage(
        SpecimenRows specimen,
        TubeRow first,
        Storage storage,
        DateTimeOffset started
    )
    {
        ImmutableArray<PlannedTest> tests =
        [
            .. _planned[(first.Group, storage.Id)]
                .Select(planned => Test(specimen, first, storage, planned, started)),
        ];
        return _protocol.DelaysPerSpecimen is { } perSpecimen
            ? Assigned(tests, perSpecimen)
            : tests;
    }

    /// <summary>What is planned for every specimen of a group in a storage, by time.</summary>
    private IEnumerable<Planned> PlannedIn(string patients, string storage) =>
        PlannedOccasions
            .Of(
                _protocol,
                [
                    .. _protocol.Analytes.Where(analyte =>
                        analyte.Groups.IsEmpty || analyte.Groups.Contains(patients)
                    ),
                ],
                patients,
                storage
            )
            .OrderBy(item => item.Key.Delay)
            .Select(item =>
            {
                var (earliest, latest) = TimingRules.Planned(item.Key, _protocol);
                return new Planned(new(item.Key), [.. item], earliest, latest);
            });

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
        SpecimenRows specimen,
        TubeRow first,
        Storage? storage,
        Planned planned,
        DateTimeOffset started
    )
    {
        var (earliest, latest) = (started + planned.Earliest, started + planned.Latest);
        var (without, isLost) = Missing(RowsAt(specimen, storage, planned), planned.Analytes);
        return new PlannedTest(
            specimen.Specimen,
            first.Group,
            storage?.Id ?? "",
            planned.Occasion,
            Standing(),
            earliest,
            latest
        )
        {
            Analytes = without,
            SpinFrom = latest - storage?.SpinToTest,
        };

        TestStanding Standing() =>
            without.IsEmpty
                ? isLost
                    ? TestStanding.Lost
                    : TestStanding.Tested
                : storage is not null && IsNotDrawn(specimen.Specimen, storage.Id, planned.Occasion)
                    ? TestStanding.NotPlanned
                    : _inQuestion.Contains(specimen.Specimen)
                        ? TestStanding.InQuestion
                        : _asOf > latest
                            ? TestStanding.Overdue
                            : _asOf >= earliest
                                ? TestStanding.DueNow
                                : TestStanding.DueLater;
    }

    /// <summary>The results at a time; of a baseline those of any tube.</summary>
    private static List<ResultRow> RowsAt(SpecimenRows specimen, Storage? storage, Planned planned)
    {
        var found = new List<ResultRow>(planned.Analytes.Length);
        foreach (var row in specimen.Results.Span)
        {
            if (
                row.Occasion == planned.Occasion
                && !AwaitedRows.IsBlank(row)
                && (storage is null || IsIn(specimen, row.Tube, storage.Id))
            )
            {
                found.Add(row);
            }
        }

        return found;
    }

    private static bool IsIn(SpecimenRows specimen, string code, string storage)
    {
        foreach (var tube in specimen.Tubes.Span)
        {
            if (tube.Tube == code && tube.Storage == storage)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The analytes without a row, and whether one has nothing but reasons for the absence of a result.</summary>
    private static (ImmutableArray<string> Without, bool IsLost) Missing(
        List<ResultRow> rows,
        ImmutableArray<string> analytes
    )
    {
        if (rows.Count == 0)
        {
            return (analytes, false);
        }

        ImmutableArray<string> without = [];
        var isLost = false;
        foreach (var analyte in analytes)
        {
            var (isThere, hasResult) = (false, false);
            foreach (var row in rows)
            {
                if (row.Analyte == analyte)
                {
                    isThere = true;
                    hasResult |= row.Result is not MissingResult;
                }
            }

            without = isThere ? without : without.Add(analyte);
            isLost |= isThere && !hasResult;
        }

        return (without, isLost);
    }

    private bool IsNotDrawn(string specimen, string storage, TestOccasion occasion) =>
        _notDrawn[specimen]
            .Any(item =>
                item.TimePoint == occasion.TimePoint && (item.Storage ?? storage) == storage
            );

    /// <summary>What is planned for a specimen at one time.</summary>
    /// <param name="Occasion">Baseline or planned delay.</param>
    /// <param name="Analytes">What is tested.</param>
    /// <param name="Earliest">From when on, since the time of the specimen counts.</param>
    /// <param name="Latest">Until when.</param>
    private sealed record Planned(
        TestOccasion Occasion,
        ImmutableArray<string> Analytes,
        TimeSpan Earliest,
        TimeSpan Latest
    );
}
