using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Files.Tests.ReadyProtocols;

/// <summary>What every file of protocols/ must hold.</summary>
public sealed class ReadyProtocolTests
{
    /// <summary>Two or three specimens more than a step of the exact bound are a reserve; more are a loss.</summary>
    private const int MostReserve = 3;

    /// <summary>Days on which a run out of control costs no more than its own pairs.</summary>
    private const int FewestDays = 8;

    private static readonly string[] s_ownersTask =
    [
        "source-from-memory",
        "source-is-an-example",
        "manufacturer-limit-not-stated",
        "left-to-change",
    ];

    public static TheoryData<string> Names => ReadyProtocolFile.Names;

    [Fact]
    public void There_are_protocols_for_at_least_22_situations() =>
        Assert.InRange(Names.Count, 22, 60);

    [Fact]
    public void The_guide_names_every_file()
    {
        var guide = File.ReadAllText(Path.Combine(ReadyProtocolFile.Folder, "README.md"));

        Assert.All(
            Names.Select(row => row.Data),
            name => Assert.Contains($"`{name}`", guide, StringComparison.Ordinal)
        );
    }

    /// <summary>Another caution stands by its code in brackets in the file, which says why it is borne.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Raises_only_what_its_owner_must_put_in_or_what_it_explains(string name)
    {
        var file = ReadyProtocolFile.Read(name);

        Assert.All(
            ProtocolReader
                .Read(File.ReadAllBytes(PathOf(name)), name)
                .Queries.Select(query => query.Code)
                .Except(s_ownersTask),
            code => Assert.Contains($"({code})", file.Text, StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Mean_and_each_specimen_are_judged_and_every_limit_is_used(string name)
    {
        var protocol = ReadyProtocolFile.Read(name).Protocol;

        Assert.All(
            ReadyProtocolFile.Read(name).Studied,
            item =>
            {
                var criteria = protocol
                    .Applying(item.Analyte.Id, item.Group.Id)
                    .Select(applying => applying.Criterion)
                    .ToArray();
                Assert.Single(criteria.OfType<BiasCriterion>());
                Assert.Single(criteria.OfType<IndividualCriterion>());
            }
        );
        Assert.Empty(
            protocol
                .Limits.Select(limit => limit.Id)
                .Except(
                    protocol
                        .Criteria.SelectMany(criterion => criterion.Limits)
                        .Select(choice => choice.Limit)
                )
        );
    }

    /// <summary>One specimen may move by what the mean may and what two results without any change differ by (1.65·√2·CV).</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_limit_for_one_specimen_holds_that_for_the_mean_and_the_imprecision(string name)
    {
        var file = ReadyProtocolFile.Read(name);

        Assert.All(
            file.Studied,
            item =>
            {
                var limits = file.Protocol.Applying(item.Analyte.Id, item.Group.Id);
                var mean = limits.Single(applying => applying.Criterion is BiasCriterion).Limit!;
                var each = limits
                    .Single(applying => applying.Criterion is IndividualCriterion)
                    .Limit!;
                Assert.InRange(
                    (double)mean.Percent!.Value
                        + (1.65 * Math.Sqrt(2) * (double)item.Analyte.BetweenRunCvPercent!.Value),
                    0,
                    (double)each.Percent!.Value
                );
                Assert.InRange(mean.Percent.Value, 0, 10);
                Assert.InRange(mean.Percent.Value, 0, each.Percent.Value / 2);
            }
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_first_time_is_within_twice_the_window_and_days_are_enough(string name)
    {
        var file = ReadyProtocolFile.Read(name);

        Assert.All(
            file.Studied,
            item =>
                Assert.DoesNotContain(
                    file.StoragesOf(item.Analyte),
                    storage =>
                        file.Protocol.FirstTestIsTooLate(item.Analyte, item.Group.Id, storage.Id)
                )
        );
        Assert.InRange(file.Protocol.PlannedDays!.Value, FewestDays, 366);
        Assert.InRange(file.Protocol.MinimumDays, 5, FewestDays);
        Assert.Contains("SPARE", file.Text, StringComparison.Ordinal);
        Assert.Contains("with TWO results", OneLine(file.Text), StringComparison.Ordinal);
    }

    /// <summary>Between two steps of the exact bound more specimens make a criterion harder to meet.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_number_of_specimens_is_a_step_of_a_criterion_on_a_share(string name)
    {
        var protocol = ReadyProtocolFile.Read(name).Protocol;

        Assert.All(
            protocol.Groups,
            patients =>
                Assert.Contains(
                    protocol.Criteria.Where(criterion =>
                        criterion.AppliesTo(patients.Id)
                        && criterion.SharePercentRequired is not null
                    ),
                    criterion => IsStep(criterion, patients)
                )
        );
    }

    /// <summary>What a group's number can show, by the exact bound of the share of single specimens or of kept classes.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_reason_for_a_number_of_specimens_is_right(string name)
    {
        var protocol = ReadyProtocolFile.Read(name).Protocol;

        Assert.All(
            protocol.Groups,
            patients =>
            {
                var applying = protocol
                    .Analytes.Where(analyte =>
                        analyte.Groups.IsEmpty || analyte.Groups.Contains(patients.Id)
                    )
                    .SelectMany(analyte => protocol.Applying(analyte.Id, patients.Id))
                    .Select(item => item.Criterion)
                    .ToArray();
                var criterion =
                    applying.FirstOrDefault(item => item is ClassificationCriterion)
                    ?? applying.First(item => item is IndividualCriterion);
                var share = criterion.SharePercentRequired!.Value;
                Assert.StartsWith(
                    $"with {patients.Specimens}, {AcceptanceNumber.Of(patients.Specimens, (double)share / 100, criterion.ConfidenceLevel)} may change ",
                    patients.WhySoMany,
                    StringComparison.Ordinal
                );
                Assert.Contains($" {share} % ", patients.WhySoMany, StringComparison.Ordinal);
            }
        );
    }

    /// <summary>Planning needs a span of baselines, how many lie in its parts, and what others found at each time.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Baselines_and_expected_changes_are_planned_for_every_time_group_and_storage(
        string name
    )
    {
        var file = ReadyProtocolFile.Read(name);

        Assert.All(
            file.Studied,
            item =>
            {
                var (analyte, patients) = item;
                var range = analyte.PlannedRanges.Single(part => part.Group == patients.Id);
                var parts = analyte
                    .PlannedNumbers.Where(part => part.Group == patients.Id)
                    .ToList();
                Assert.Equal(patients.Specimens, parts.Sum(part => part.Specimens));
                Assert.Equal(range.Lowest, parts.Min(part => part.Lowest));
                Assert.Equal(range.Highest, parts.Max(part => part.Highest));
                Assert.Equal(
                    from storage in file.StoragesOf(analyte)
                    from time in file.Protocol.TimePointsOf(analyte, patients.Id)
                    orderby storage.Id, time.Delay
                    select (storage.Id, time),
                    from storage in file.StoragesOf(analyte)
                    from change in analyte.ExpectedChanges
                    where
                        change.Group == patients.Id
                        && (change.Storage is null || change.Storage == storage.Id)
                    orderby storage.Id, change.TimePoint.Delay
                    select (storage.Id, change.TimePoint)
                );
            }
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_time_that_is_hard_to_support_says_why_it_is_studied(string name) =>
        Assert.All(
            ReadyProtocolFile
                .Read(name)
                .Protocol.Analytes.SelectMany(analyte => analyte.ExpectedChanges)
                .Where(change => change.Chance < ChanceOfSupport.Open),
            change => Assert.NotNull(change.Why)
        );

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_limit_of_a_mean_names_what_else_could_have_been_chosen(string name)
    {
        var protocol = ReadyProtocolFile.Read(name).Protocol;
        var ofMeans = protocol
            .Criteria.OfType<BiasCriterion>()
            .SelectMany(criterion => criterion.Limits)
            .Select(choice => choice.Limit)
            .ToHashSet();

        Assert.All(
            protocol.Limits.Where(limit => ofMeans.Contains(limit.Id)),
            limit => Assert.NotEmpty(limit.Alternatives)
        );
    }

    /// <summary>Lines for the laboratory's own words ("#: ") fit the protocol when they are put in use, and then nothing about limits, shares and levels is missing.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_words_of_the_laboratory_can_be_put_in_use(string name)
    {
        var adopted = ReadyProtocolFile
            .Read(name)
            .Text.ReplaceLineEndings("\n")
            .Replace("\n#: ", "\n", StringComparison.Ordinal);
        var outcome = ProtocolReader.Read(System.Text.Encoding.UTF8.GetBytes(adopted), name);

        Assert.True(
            outcome.TryGet(out var protocol),
            string.Join("\n", outcome.Queries.Select(query => query.Message))
        );
        Assert.All(protocol.Limits, limit => Assert.NotNull(limit.Rationale.Reason));
        Assert.All(
            protocol.Criteria.Where(criterion => criterion.SharePercentRequired is not null),
            criterion => Assert.NotNull(criterion.Rationale.ChosenBy)
        );
        Assert.All(
            protocol.Analytes,
            analyte =>
                Assert.Equal(analyte.DecisionLevels, analyte.LevelMeanings.Select(m => m.Level))
        );
    }

    private static bool IsStep(Criterion criterion, PatientGroup patients)
    {
        var share = (double)criterion.SharePercentRequired!.Value / 100;
        var count =
            (criterion as ReclassificationCriterion)?.Near?.SpecimensMinimum ?? patients.Specimens;
        return AcceptanceNumber.Of(count, share, criterion.ConfidenceLevel)
            > (AcceptanceNumber.Of(count - MostReserve, share, criterion.ConfidenceLevel) ?? -1);
    }

    private static string PathOf(string name) =>
        Path.Combine(ReadyProtocolFile.Folder, name + ".toml");

    /// <summary>Comments broken into lines, as one.</summary>
    private static string OneLine(string text) =>
        text.ReplaceLineEndings(" ").Replace(" # ", " ", StringComparison.Ordinal);
}
