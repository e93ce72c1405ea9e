using System.Text;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Starting;
using StabilityStudy.Files.Tests.ReadyProtocols;

namespace StabilityStudy.Files.Tests.Starting;

/// <summary>Protocols of repeats: made from every ready protocol they can be locked, and limits and criteria stay those of the original.</summary>
public sealed class RepeatedProtocolTests
{
    private static readonly RepeatOf s_reduced = new(
        "WB-RT-12-3f09c2d4",
        new string('3', 64),
        RepeatTier.Reduced,
        "new lot \"R-2602\""
    );

    public static TheoryData<string> Names => ReadyProtocolFile.Names;

    private static (StudyProtocol Protocol, RepeatedProtocol Made) Reduced(
        string name,
        Func<RepeatedWindow, bool>? only = null
    )
    {
        var original = ReadyProtocolFile.Read(name);
        var made = RepeatedProtocol.Reduced(
            Encoding.UTF8.GetBytes(original.Text),
            original.Protocol,
            s_reduced,
            [
                .. from analyte in original.Protocol.Analytes
                from storage in original.StoragesOf(analyte)
                from patients in original.Protocol.Groups
                where analyte.Groups.IsEmpty || analyte.Groups.Contains(patients.Id)
                let window = new RepeatedWindow(
                    analyte.Id,
                    patients.Id,
                    storage.Id,
                    original.Protocol.TimePointsOf(analyte, patients.Id)[^1].Delay
                )
                where only is null || only(window)
                select window,
            ]
        );
        return (Read(made.Text), made);
    }

    private static StudyProtocol Read(string text)
    {
        var outcome = ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "protocol.toml");
        Assert.True(outcome.TryGet(out var protocol), string.Join('\n', outcome.Queries) + text);
        Assert.DoesNotContain(outcome.Queries, query => query.Severity == Severity.Stop);
        return protocol;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_reduced_repeat_has_the_last_times_and_the_limits_of_the_original(string name)
    {
        var original = ReadyProtocolFile.Read(name).Protocol;
        var (protocol, _) = Reduced(name);

        Assert.Equal(s_reduced, protocol.Repeat);
        Assert.Equal(original.Code, protocol.Code);
        foreach (var analyte in protocol.Analytes)
        {
            foreach (var group in protocol.Groups.Where(item => analyte.Groups.Contains(item.Id)))
            {
                var before = original.Analytes.Single(item => item.Id == analyte.Id);
                Assert.Equal(
                    original.TimePointsOf(before, group.Id)[^1],
                    protocol.TimePointsOf(analyte, group.Id)[^1]
                );
                Assert.All(
                    protocol.Storages.Where(storage => analyte.Storages.Contains(storage.Id)),
                    storage =>
                    {
                        Assert.False(protocol.FirstTestIsTooLate(analyte, group.Id, storage.Id));
                        Assert.Equal(
                            before.StandardWindowOf(group.Id, storage.Id),
                            analyte.StandardWindowOf(group.Id, storage.Id)
                        );
                    }
                );
                Assert.Equal(
                    original
                        .Applying(analyte.Id, group.Id)
                        .Where(item => item.Criterion.Kind != Core.Criteria.CriterionKind.Drift)
                        .Select(item =>
                            (
                                item.Criterion.Id,
                                item.Limit?.Percent,
                                item.Limit?.AbsoluteInUnit,
                                item.Criterion.ConfidenceLevel
                            )
                        ),
                    protocol
                        .Applying(analyte.Id, group.Id)
                        .Select(item =>
                            (
                                item.Criterion.Id,
                                item.Limit?.Percent,
                                item.Limit?.AbsoluteInUnit,
                                item.Criterion.ConfidenceLevel
                            )
                        )
                );
            }
        }

        Assert.Equal(original.MinimumDays, protocol.MinimumDays);
    }

    // 85 %: 30 with 1 outside; 90 %: 46 with 1 outside (binomial distribution; 46 also stands in the protocols' own table).
    [Fact]
    public void Numbers_are_the_fewest_of_which_one_may_lie_outside()
    {
        var (protocol, made) = Reduced("aptt-whole-blood-room-temperature");

        Assert.Contains(
            made.Numbers,
            number =>
                number
                    is {
                        Basis: ReducedBasis.ShareWithOneOutside,
                        Specimens: 30,
                        SharePercent: 85,
                        Original: 50
                    }
        );
        Assert.Equal(30, protocol.Groups[0].Specimens);
        Assert.Contains("one may lie outside", made.Text, StringComparison.Ordinal);
        Assert.Equal(46, ReducedNumber.Of(Shares(90), Group(61)).Specimens);
        Assert.Equal(
            (40, ReducedBasis.AsOriginal),
            (
                ReducedNumber.Of(Shares(90), Group(40)).Specimens,
                ReducedNumber.Of(Shares(90), Group(40)).Basis
            )
        );

        static PatientGroup Group(int specimens) =>
            ReadyProtocolFile.Read("aptt-whole-blood-room-temperature").Protocol.Groups[0] with
            {
                Specimens = specimens,
            };

        static StudyProtocol Shares(decimal percent)
        {
            var ready = ReadyProtocolFile.Read("aptt-whole-blood-room-temperature").Protocol;
            return ready with
            {
                Criteria =
                [
                    .. ready
                        .Criteria.OfType<Core.Criteria.Individual.IndividualCriterion>()
                        .Select(item => item with { SharePercentMinimum = percent }),
                ],
            };
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Numbers_are_never_more_than_the_originals(string name)
    {
        var original = ReadyProtocolFile.Read(name).Protocol;
        var (protocol, made) = Reduced(name);

        Assert.All(
            protocol.Groups,
            group =>
                Assert.InRange(
                    group.Specimens,
                    1,
                    original.Groups.Single(item => item.Id == group.Id).Specimens
                )
        );
        Assert.Equal(protocol.Groups.Length, made.Numbers.Length);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_window_alone_gives_a_protocol_too(string name)
    {
        var original = ReadyProtocolFile.Read(name).Protocol;
        foreach (var analyte in original.Analytes)
        {
            foreach (
                var group in original.Groups.Where(item =>
                    analyte.Groups.IsEmpty || analyte.Groups.Contains(item.Id)
                )
            )
            {
                var (protocol, _) = Reduced(
                    name,
                    window => window.Analyte == analyte.Id && window.Group == group.Id
                );

                Assert.Equal(analyte.Id, Assert.Single(protocol.Analytes).Id);
                Assert.Equal(group.Id, Assert.Single(protocol.Groups).Id);
            }
        }
    }

    [Fact]
    public void A_time_beyond_twice_todays_rule_has_one_on_the_way()
    {
        var original = ReadyProtocolFile.Read("aptt-ufh-whole-blood");
        var (protocol, made) = Reduced("aptt-ufh-whole-blood");

        // Today 1 h; the original is tested after 1, 2 and 4 h.
        Assert.Equal(
            ["1 h", "2 h", "4 h"],
            original.Protocol.TimePoints.Select(time => time.ToString())
        );
        Assert.Equal(["2 h", "4 h"], protocol.TimePoints.Select(time => time.ToString()));
        Assert.Contains("2 h on the way", made.Text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_full_repeat_is_the_original_with_its_comments_as_the_next_version(string name)
    {
        var original = ReadyProtocolFile.Read(name);
        var full = s_reduced with { Tier = RepeatTier.Full };
        var made = RepeatedProtocol.Full(
            Encoding.UTF8.GetBytes(original.Text),
            original.Protocol,
            full
        );
        var again = RepeatedProtocol.Full(Encoding.UTF8.GetBytes(made.Text), Read(made.Text), full);

        Assert.Equal(full, Read(made.Text).Repeat);
        Assert.Equal(
            original.Text.Split('\n').Except(["version = \"1\""]),
            original
                .Text.Split('\n')
                .Except(["version = \"1\""])
                .Where(made.Text.Split('\n').Contains)
        );
        Assert.Equal("2", Read(made.Text).Version);
        Assert.Equal("3", Read(again.Text).Version);
        Assert.Single(
            again.Text.Split('\n'),
            line => line.StartsWith("repeat = ", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("digest = \"33\"", "not-a-digest")]
    [InlineData("tier = \"small\"", "unknown-word")]
    public void A_repeat_that_cannot_be_read_is_a_query(string line, string code)
    {
        var (_, made) = Reduced("aptt-whole-blood-room-temperature");
        var key = line[..line.IndexOf(' ', StringComparison.Ordinal)];
        var text = System.Text.RegularExpressions.Regex.Replace(
            made.Text,
            key + " = \"[^\"]*\"",
            line,
            System.Text.RegularExpressions.RegexOptions.None,
            TimeSpan.FromSeconds(1)
        );

        Assert.Contains(
            code,
            ProtocolReader
                .Read(Encoding.UTF8.GetBytes(text), "protocol.toml")
                .Queries.Select(query => query.Code)
        );
    }
}
