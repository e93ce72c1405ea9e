namespace StabilityStudy.Core.Bench;

/// <summary>What is drawn, and when each tube is spun and tested: known before the first tube.</summary>
public static class DrawPlan
{
    /// <summary>The specimens of a draw, those of the groups in turn.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="codes">The specimens to be drawn.</param>
    /// <param name="seed">Seed of the run order.</param>
    /// <param name="withSpare">Whether each specimen has a spare tube.</param>
    public static ImmutableArray<BenchSpecimen> Of(
        StudyProtocol protocol,
        ImmutableArray<SpecimenCode> codes,
        int seed,
        bool withSpare
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var specimens = codes
            .GroupBy(code => code.Group)
            .SelectMany(group =>
                group.Select((code, i) => (Code: code, Place: i, Specimen: Specimen(code, i)))
            )
            .OrderBy(item => item.Place)
            .ThenBy(item => IndexOf(item.Code.Group))
            .Select(item => item.Specimen)
            .ToImmutableArray();
        return WithRunOrder(specimens, seed);

        int IndexOf(string group) =>
            protocol.Groups.IndexOf(protocol.Groups.Single(item => item.Id == group));

        BenchSpecimen Specimen(SpecimenCode code, int place) =>
            new(
                code.Code,
                protocol.Groups.Single(item => item.Id == code.Group),
                Tubes(protocol, code, place),
                withSpare ? Spare(protocol, code) : null
            );
    }

    /// <summary>A specimen's planned tests with the storage of each, in the order of time: the letters of its tubes go by it.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="group">Patient group.</param>
    public static ImmutableArray<(Storage? Storage, TestOccasion Occasion)> TestsOf(
        StudyProtocol protocol,
        string group
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var analytes = protocol
            .Analytes.Where(analyte => analyte.Groups.IsEmpty || analyte.Groups.Contains(group))
            .ToImmutableArray();
        return
        [
            (null, default),
            .. protocol
                .Storages.SelectMany(storage =>
                    Collecting
                        .PlannedOccasions.Of(protocol, analytes, group, storage.Id)
                        .Select(item => ((Storage?)storage, new TestOccasion(item.Key)))
                )
                .OrderBy(item => item.Item2.TimePoint?.Delay),
        ];
    }

    /// <summary>The letter of a specimen's tube: A, B … Z, AA, AB …</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="place">Place of its test in the order of time, from 0.</param>
    public static string LetterOf(StudyProtocol protocol, int place)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return protocol.TubePlan == TubePlan.OneTubeRetested ? Letter(0) : Letter(place);
    }

    private static string Letter(int place) =>
        place < 26
            ? ((char)('A' + place)).ToString()
            : Letter((place / 26) - 1) + (char)('A' + (place % 26));

    private static ImmutableArray<BenchTube> Tubes(
        StudyProtocol protocol,
        SpecimenCode code,
        int place
    )
    {
        var tests = TestsOf(protocol, code.Group);
        var group = protocol.Groups.Single(item => item.Id == code.Group);
        return
        [
            .. tests.Select(
                (test, i) =>
                {
                    var letter = LetterOf(protocol, i);
                    var (earliest, latest) = test.Occasion.TimePoint is { } timePoint
                        ? TimingRules.Planned(timePoint, protocol)
                        : (TimeSpan.Zero, protocol.BaselineWithin);
                    return new BenchTube(
                        $"{code.Code}-{letter}",
                        letter,
                        test.Storage,
                        test.Occasion,
                        protocol.DrawsATubeForEachTest ? Position(i, place, tests.Length) : null,
                        SpinTime.Of(protocol, group, test.Storage, test.Occasion.TimePoint),
                        earliest,
                        latest,
                        0
                    );
                }
            ),
        ];
    }

    /// <summary>Each specimen begins one tube further on, so that none of the times has always the same place at the draw.</summary>
    private static int Position(int tube, int specimen, int tubes) =>
        ((tube + specimen + 1) % tubes) + 1;

    private static BenchTube Spare(StudyProtocol protocol, SpecimenCode code)
    {
        var tubes =
            protocol.TubePlan == TubePlan.OneTubeRetested
                ? 1
                : TestsOf(protocol, code.Group).Length;
        var letter = Letter(tubes);
        return new(
            $"{code.Code}-{letter}",
            letter,
            null,
            default,
            protocol.DrawsATubeForEachTest ? tubes + 1 : null,
            new SpinTime(SpinMoment.NotStated, null, null),
            TimeSpan.Zero,
            TimeSpan.Zero,
            0
        );
    }

    private static ImmutableArray<BenchSpecimen> WithRunOrder(
        ImmutableArray<BenchSpecimen> specimens,
        int seed
    )
    {
        var ranks = specimens
            .SelectMany(specimen =>
                specimen
                    .Tubes.Where(tube => !tube.Occasion.IsBaseline)
                    .Select(tube => (specimen.Code, Storage: tube.Storage?.Id ?? "", tube.Occasion))
            )
            .GroupBy(item => (item.Storage, item.Occasion))
            .SelectMany(run =>
            {
                var codes = run.Select(item => item.Code).ToImmutableArray();
                var order = RunOrder.Of(codes, run.Key.Storage, run.Key.Occasion, seed);
                return codes.Select(
                    (code, i) => (Key: (code, run.Key.Storage, run.Key.Occasion), Rank: order[i])
                );
            })
            .ToDictionary(item => item.Key, item => item.Rank);
        return
        [
            .. specimens.Select(specimen =>
                specimen with
                {
                    Tubes =
                    [
                        .. specimen.Tubes.Select(tube =>
                            tube with
                            {
                                RunOrder = ranks.GetValueOrDefault(
                                    (specimen.Code, tube.Storage?.Id ?? "", tube.Occasion)
                                ),
                            }
                        ),
                    ],
                }
            ),
        ];
    }
}
