using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Study;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Locking;

/// <summary>Did the criteria come before the data?</summary>
public sealed class LockEvidenceTests
{
    private const string Hash = "aa";

    private static SmallStudy Study { get; } = SmallStudy.Of([6], ["30.0 | 30.1", "31.0 | 31.2"]);

    private static DateTimeOffset First => Study.Inputs.Tubes.Min(tube => tube.CollectedAt);

    private static ProtocolLock Lock(int number, string hash, TimeSpan fromFirst) =>
        new(number, hash, First + fromFirst, "LS1", number == 1 ? null : "a limit was corrected");

    private static StudyAnalysis Analyze(params ImmutableArray<ProtocolLock> locks) =>
        StudyAnalyzer.Analyze(
            Study.Inputs with
            {
                Locks = locks,
                Facts = Study.Inputs.Facts with
                {
                    People = [new Person("LS1", "Lab Scientist One", "lab scientist")],
                },
            },
            new StudyIdentity("", [new FileHash("protocol.toml", Hash)], []),
            [],
            "0"
        );

    private static string[] Codes(StudyAnalysis analysis) =>
        [
            .. analysis
                .Queries.Where(query => query.Source.File == "protocol.lock")
                .Select(query => query.Code),
        ];

    [Fact]
    public void Without_a_lock_nothing_is_shown()
    {
        var evidence = Analyze().Lock;

        Assert.Equal(
            (LockStanding.NotLocked, LockLevel.NotLocked),
            (evidence.Standing, evidence.Level)
        );
        Assert.Equal(First, evidence.FirstCollection);
    }

    [Theory]
    [InlineData(DifferenceKind.Number, LockStanding.BeforeFirstCollection)]
    [InlineData(DifferenceKind.Label, LockStanding.BeforeFirstCollection)]
    [InlineData(DifferenceKind.Rule, LockStanding.AfterFirstCollection)]
    public void An_amendment_after_the_first_collection_leaves_unchanged_criteria_where_they_were(
        DifferenceKind kind,
        LockStanding standing
    )
    {
        var evidence = Analyze(
            Lock(1, "bb", TimeSpan.FromDays(-1)),
            Lock(2, Hash, TimeSpan.FromDays(1)) with
            {
                Level = LockLevel.ByTimeStamp,
                Differences = [new ProtocolDifference("key", "1", "2", kind)],
            }
        ).Lock;

        Assert.Equal(standing, evidence.Standing);
        Assert.Equal(
            standing == LockStanding.BeforeFirstCollection
                ? LockLevel.ThisComputersClock
                : LockLevel.ByTimeStamp,
            evidence.Level
        );
    }

    [Fact]
    public void An_amendment_of_which_nothing_is_known_may_have_changed_a_criterion() =>
        Assert.Equal(
            LockStanding.AfterFirstCollection,
            Analyze(
                Lock(1, "bb", TimeSpan.FromDays(-1)),
                Lock(2, Hash, TimeSpan.FromDays(1))
            ).Lock.Standing
        );

    [Fact]
    public void A_lock_before_the_first_collection_has_the_level_that_was_checked()
    {
        var analysis = Analyze(
            Lock(1, Hash, TimeSpan.FromMinutes(-1)) with
            {
                Level = LockLevel.BySignature,
            }
        );

        Assert.Equal(LockStanding.BeforeFirstCollection, analysis.Lock.Standing);
        Assert.Equal(LockLevel.BySignature, analysis.Lock.Level);
        Assert.Empty(Codes(analysis));
    }

    [Fact]
    public void Evidence_that_does_not_fit_is_worse_than_none()
    {
        var analysis = Analyze(
            Lock(1, Hash, TimeSpan.FromDays(-9)) with
            {
                Level = LockLevel.Contradicted,
            },
            Lock(2, Hash, TimeSpan.FromDays(-2))
        );

        Assert.Equal(LockStanding.Contradicted, analysis.Lock.Standing);
        Assert.Contains("lock-evidence-does-not-fit", Codes(analysis));
    }

    [Theory]
    [InlineData(-1, LockStanding.BeforeFirstCollection)]
    [InlineData(1, LockStanding.AfterFirstCollection)]
    public void A_stamp_later_than_the_stated_time_counts(int minutes, LockStanding standing)
    {
        var analysis = Analyze(
            Lock(1, Hash, TimeSpan.FromMinutes(-5)) with
            {
                Level = LockLevel.ByTimeStamp,
                StampedAt = First + TimeSpan.FromMinutes(minutes),
            }
        );

        Assert.Equal(standing, analysis.Lock.Standing);
    }

    [Fact]
    public void An_amendment_that_says_to_be_older_than_what_it_amends_proves_nothing()
    {
        var analysis = Analyze(
            Lock(1, "bb", TimeSpan.FromDays(1)),
            Lock(2, Hash, TimeSpan.FromDays(-1))
        );

        Assert.Equal(LockStanding.OutOfOrder, analysis.Lock.Standing);
        Assert.Equal(["locks-out-of-order", "protocol-amended"], Codes(analysis));
    }

    [Fact]
    public void A_lock_at_the_moment_of_the_first_collection_comes_too_late()
    {
        var analysis = Analyze(Lock(1, Hash, TimeSpan.Zero));

        Assert.Equal(LockStanding.AfterFirstCollection, analysis.Lock.Standing);
        Assert.Equal(["locked-after-first-collection"], Codes(analysis));
    }

    [Fact]
    public void A_protocol_other_than_the_locked_one_is_not_locked()
    {
        var analysis = Analyze(Lock(1, "bb", TimeSpan.FromDays(-1)));

        Assert.Equal(LockStanding.ProtocolChanged, analysis.Lock.Standing);
        Assert.Equal(LockLevel.NotLocked, analysis.Lock.Level);
        Assert.Equal(["protocol-changed-after-lock"], Codes(analysis));
    }

    [Fact]
    public void An_amendment_after_the_first_collection_takes_the_proof_away()
    {
        var analysis = Analyze(
            Lock(1, "bb", TimeSpan.FromDays(-1)),
            Lock(2, Hash, TimeSpan.FromDays(1))
        );

        Assert.Equal(LockStanding.AfterFirstCollection, analysis.Lock.Standing);
        Assert.Equal(["locked-after-first-collection", "protocol-amended"], Codes(analysis));
    }

    [Fact]
    public void A_lock_by_somebody_whom_the_study_does_not_name_is_told()
    {
        var analysis = Analyze(
            Lock(1, "bb", TimeSpan.FromDays(-2)) with
            {
                By = "Lab Scientist One",
            },
            Lock(2, Hash, TimeSpan.FromDays(-1)) with
            {
                By = "nobody",
            }
        );

        Assert.Equal(["lock-by-unknown", "protocol-amended"], Codes(analysis));
    }
}
