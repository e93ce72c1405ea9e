using System.Reflection;
using System.Runtime.CompilerServices;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Register;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Tests.Architecture;

public sealed class CoreArchitectureTests
{
    private static readonly Assembly s_core = typeof(StudyAnalyzer).Assembly;

    /// <summary>The zero member of each enum, and why a value nobody set must be that one.</summary>
    private static readonly ImmutableDictionary<Type, (Enum Zero, string Reason)> s_zeroMembers =
        new Dictionary<Type, (Enum, string)>
        {
            [typeof(IntervalPlace)] = (IntervalPlace.ReachesLimit, "claims nothing"),
            [typeof(CriterionKind)] = (CriterionKind.Bias, "is stated by each criterion itself"),
            [typeof(Verdict)] = (Verdict.Inconclusive, "claims nothing"),
            [typeof(Conclusion)] = (Conclusion.Inconclusive, "claims nothing"),
            [typeof(CollectionState)] = (CollectionState.Incomplete, "concludes nothing"),
            [typeof(DifferenceKind)] = (DifferenceKind.Rule, "locks the criteria anew"),
            [typeof(ManufacturerStanding)] = (
                ManufacturerStanding.Beyond,
                "is printed as a modified test"
            ),
            [typeof(ControlRule)] = (ControlRule.EveryRun, "asks for controls"),
            [typeof(ChangeOrigin)] = (
                ChangeOrigin.Collection,
                "counts what came before the baseline too"
            ),
            [typeof(SideDirection)] = (SideDirection.Both, "counts every change of side"),
            [typeof(TimeOrigin)] = (TimeOrigin.Collection, "counts the longest time"),
            [typeof(ChanceOfSupport)] = (ChanceOfSupport.OutOfReach, "promises nothing"),
            [typeof(ChangeReading)] = (
                ChangeReading.AsMeasured,
                "is part of every conclusion; none is safer than another"
            ),
            [typeof(RepeatDraws)] = (RepeatDraws.LeftOut, "counts a person once"),
            [typeof(DecisionRule)] = (DecisionRule.Confidence, "controls the error"),
            [typeof(ControlKind)] = (ControlKind.Control, "must lie within its range"),
            [typeof(PairStatus)] = (PairStatus.Ineligible, "supports nothing"),
            [typeof(Anticoagulant)] = (Anticoagulant.Heparin, "asks for decision levels"),
            [typeof(AlternativeKind)] = (AlternativeKind.Numbers, "changes numbers alone"),
            [typeof(ChanceCost)] = (ChanceCost.Change, "blames the change itself"),
            [typeof(DaysOrigin)] = (DaysOrigin.Supposed, "says that nobody stated the days"),
            [typeof(LowChanceKind)] = (
                LowChanceKind.OutOfReachWithoutChange,
                "the worst of the three"
            ),
            [typeof(PlanGap)] = (PlanGap.Classes, "gives no chance"),
            [typeof(SdOrigin)] = (SdOrigin.Supposed, "says that nobody stated the spread"),
            [typeof(ReportStanding)] = (ReportStanding.NotTrusted, "puts nothing into force"),
            [typeof(WindowStanding)] = (WindowStanding.NotTrusted, "puts nothing into force"),
            [typeof(NoticeKind)] = (NoticeKind.Withdrawn, "takes a window away"),
            [typeof(NoticeStanding)] = (NoticeStanding.NotTrusted, "keeps nothing in force"),
            [typeof(StudyStage)] = (StudyStage.Planned, "says least"),
            [typeof(BenchVerdict)] = (BenchVerdict.DoNotTest, "keeps a result from being reported"),
            [typeof(BenchReason)] = (BenchReason.NoRule, "claims nothing"),
            [typeof(CaseFact)] = (CaseFact.AllTrue, "names a case and answers nothing"),
            [typeof(SystemStep)] = (SystemStep.TimeNotKnown, "tests nothing"),
            [typeof(RepeatTier)] = (RepeatTier.Full, "asks for most"),
            [typeof(ReducedBasis)] = (ReducedBasis.AsOriginal, "asks for most"),
            [typeof(DiscardTubeRule)] = (DiscardTubeRule.Always, "asks for most"),
            [typeof(DrawOrder)] = (DrawOrder.First, "allows least"),
            [typeof(DiscardTube)] = (DiscardTube.NotRecorded, "claims nothing"),
            [typeof(DrawnBefore)] = (DrawnBefore.NotRecorded, "claims nothing"),
            [typeof(TransportState)] = (TransportState.NotRecorded, "claims nothing"),
            [typeof(SpecimenMaterial)] = (SpecimenMaterial.NotRecorded, "claims nothing"),
            [typeof(GoalKind)] = (GoalKind.Bias, "is the smaller"),
            [typeof(LockStanding)] = (LockStanding.NotLocked, "proves nothing"),
            [typeof(LockLevel)] = (LockLevel.NotLocked, "proves nothing"),
            [typeof(RobustnessKind)] = (
                RobustnessKind.OneSubjectLeftOut,
                "is stated by each question itself"
            ),
            [typeof(RobustnessDirection)] = (RobustnessDirection.AwayFromSupported, "warns"),
            [typeof(Severity)] = (Severity.Stop, "makes no report"),
            [typeof(QueryRank)] = (QueryRank.Stop, "makes no report"),
            [typeof(SpinMoment)] = (SpinMoment.NotStated, "leaves a blank to fill in"),
            [typeof(StorageState)] = (
                StorageState.WholeBlood,
                "has the strictest rules on spinning"
            ),
            [typeof(Cap)] = (Cap.Open, "is the less protected state"),
            [typeof(TestStanding)] = (TestStanding.Overdue, "asks for the result"),
            [typeof(TubePlan)] = (TubePlan.TubePerTimePoint, "allows no tube to be tested twice"),
            [typeof(ChangeScale)] = (ChangeScale.Percent, "refuses what it cannot divide"),
            [typeof(CensoredSide)] = (
                CensoredSide.Below,
                "has no cautious side; both are handled alike"
            ),
            [typeof(MissingReason)] = (
                MissingReason.NoReportableResult,
                "counts as outside the allowable difference"
            ),
            [typeof(Hemolysis)] = (
                Hemolysis.NotRecorded,
                "hemolysis seen later then counts as new"
            ),
            [typeof(FlagMeaning)] = (FlagMeaning.Failed, "counts as a failed test"),
            [typeof(ClotCheck)] = (ClotCheck.NotRecorded, "says that nobody looked"),
            [typeof(Origin)] = (Origin.NotRecorded, "is asked for"),
        }.ToImmutableDictionary();

    public static TheoryData<Type> PublicTypes { get; } =
    [.. s_core.GetExportedTypes().Where(type => !type.IsEnum)];

    [Fact]
    public void Core_refers_to_no_project_of_ours_but_Statistics() =>
        Assert.Equal(
            ["StabilityStudy.Statistics"],
            s_core
                .GetReferencedAssemblies()
                .Select(name => name.Name!)
                .Where(name => name.StartsWith("StabilityStudy", StringComparison.Ordinal))
        );

    [Fact]
    public void Core_refers_to_nothing_but_the_base_libraries_besides() =>
        Assert.All(
            s_core.GetReferencedAssemblies(),
            name =>
                Assert.True(
                    name.Name!.StartsWith("System.", StringComparison.Ordinal)
                        || name.Name == "StabilityStudy.Statistics",
                    name.Name
                )
        );

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_cannot_be_changed_after_it_was_made(Type type)
    {
        Assert.All(
            type.GetProperties(BindingFlags.Public | BindingFlags.Instance),
            property => Assert.True(IsReadOnly(property), property.Name)
        );
        Assert.All(
            type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static),
            field => Assert.True(field.IsLiteral || field.IsInitOnly, field.Name)
        );
    }

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_holds_only_collections_that_cannot_change(Type type) =>
        Assert.All(
            type.GetProperties(BindingFlags.Public | BindingFlags.Instance),
            property => Assert.True(HoldsNoMutableCollection(property.PropertyType), property.Name)
        );

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_class_is_sealed_static_or_a_closed_hierarchy(Type type) =>
        Assert.True(
            type.IsValueType
                || type.IsSealed
                || s_core.GetTypes().Any(other => other.BaseType == type && other.IsSealed)
        );

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_namespace_is_the_folder_of_its_project(Type type) =>
        Assert.StartsWith("StabilityStudy.Core.", type.Namespace, StringComparison.Ordinal);

    [Fact]
    public void The_zero_member_of_every_enum_is_the_cautious_one()
    {
        var enums = s_core.GetExportedTypes().Where(type => type.IsEnum).ToArray();

        Assert.Equal(
            enums.Select(type => type.Name).Order(),
            s_zeroMembers.Keys.Select(type => type.Name).Order()
        );
        Assert.All(enums, type => Assert.Equal(s_zeroMembers[type].Zero, Enum.ToObject(type, 0)));
    }

    private static bool IsReadOnly(PropertyInfo property) =>
        property.SetMethod is not { IsPublic: true } setter
        || setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool HoldsNoMutableCollection(Type type) =>
        type == typeof(string)
        || !typeof(System.Collections.IEnumerable).IsAssignableFrom(type)
        || (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>));
}
