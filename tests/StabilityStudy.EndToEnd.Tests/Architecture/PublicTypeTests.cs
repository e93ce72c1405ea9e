using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using StabilityStudy.Cli;
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
using StabilityStudy.Files.Json.Forms;
using StabilityStudy.Files.Suggestions;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Proving;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

public sealed class PublicTypeTests
{
    private static readonly Dictionary<Enum, string> s_zeroMembers = new()
    {
        [Verdict.Inconclusive] = "claims nothing",
        [Conclusion.Inconclusive] = "claims nothing",
        [ManufacturerStanding.Beyond] = "is printed as a modified test",
        [PairStatus.Ineligible] = "supports nothing",
        [CollectionState.Incomplete] = "concludes nothing",
        [DifferenceKind.Rule] = "locks the criteria anew",
        [LockLevel.NotLocked] = "proves nothing",
        [LockStanding.NotLocked] = "proves nothing",
        [LockRefusal.AlreadyLocked] = "locks nothing",
        [DecisionKind.Decline] = "puts nothing into force",
        [PartOutcome.Fails] = "trusts nothing",
        [ReportStanding.NotTrusted] = "puts nothing into force",
        [WindowStanding.NotTrusted] = "puts nothing into force",
        [NoticeKind.Withdrawn] = "takes a window away",
        [NoticeStanding.NotTrusted] = "keeps nothing in force",
        [StudyStage.Planned] = "says least",
        [DocumentKind.Report] = "is held to the most rules",
        [BenchVerdict.DoNotTest] = "keeps a result from being reported",
        [BenchReason.NoRule] = "claims nothing",
        [CaseFact.AllTrue] = "names a case and answers nothing",
        [SystemStep.TimeNotKnown] = "tests nothing",
        [RepeatTier.Full] = "asks for most",
        [ReducedBasis.AsOriginal] = "asks for most",
        [ApprovedDocumentKind.Card] = "names a document and answers nothing",
        [ComparedVersion.Same] = "lets nothing differ",
        [ControlRule.EveryRun] = "asks for controls",
        [RepeatDraws.LeftOut] = "counts a person once",
        [IntervalPlace.ReachesLimit] = "claims nothing",
        [CriterionKind.Bias] = "names a kind and claims nothing",
        [DecisionRule.Confidence] = "controls the error",
        [ControlKind.Control] = "must lie within its range",
        [RobustnessDirection.AwayFromSupported] = "speaks against the window",
        [Severity.Stop] = "makes no report",
        [QueryRank.Stop] = "makes no report",
        [AllowanceVerdict.Outside] = "speaks against the window",
        [StorageState.WholeBlood] = "has the strictest rules on spinning",
        [Anticoagulant.Heparin] = "asks for decision levels",
        [AlternativeKind.Numbers] = "changes numbers alone",
        [ChanceCost.Change] = "blames the change itself",
        [DaysOrigin.Supposed] = "says that nobody stated the days",
        [LowChanceKind.OutOfReachWithoutChange] = "the worst of the three",
        [PlanGap.Classes] = "gives no chance",
        [SdOrigin.Supposed] = "says that nobody stated the spread",
        [Cap.Open] = "is the less protected state",
        [TestStanding.Overdue] = "asks for the result",
        [TubePlan.TubePerTimePoint] = "allows no tube to be tested twice",
        [RobustnessKind.OneSubjectLeftOut] =
            "no question is cautious; each is asked where it can be",
        [ChangeReading.AsMeasured] = "a criterion must hold in every reading, so none is milder",
        [SideDirection.Both] = "counts every change of side",
        [DiscardTubeRule.Always] = "asks for most",
        [SpinMoment.NotStated] = "leaves a blank to fill in",
        [DrawOrder.First] = "allows least",
        [DiscardTube.NotRecorded] = "claims nothing",
        [DrawnBefore.NotRecorded] = "claims nothing",
        [TransportState.NotRecorded] = "claims nothing",
        [SpecimenMaterial.NotRecorded] = "claims nothing",
        [HowSure.Ask] = "leaves the choice to a person, and check stops until then",
        [BenchPageKind.Draw] = "names a page and claims nothing",
        [TimeOrigin.Collection] = "counts the longest time",
        [ChanceOfSupport.OutOfReach] = "promises nothing",
        [ChangeOrigin.Collection] = "counts also what happened before the baseline",
        [ChangeScale.Percent] = "refuses what it cannot divide",
        [CensoredSide.Below] = "no side is cautious; both are handled alike",
        [MissingReason.NoReportableResult] = "counts as outside the allowable difference",
        [FlagMeaning.Failed] = "the result then counts as failed",
        [Hemolysis.NotRecorded] = "hemolysis seen later then counts as new",
        [ClotCheck.NotRecorded] = "says that nobody looked",
        [Origin.NotRecorded] = "is asked for",
        [Agreement.Differs] = "speaks against the program",
        [AttachmentRelationship.Unspecified] = "claims nothing about the file",
        [ChainOutcome.NotChecked] = "is not the same as valid",
        [RevocationOutcome.NotChecked] = "is not the same as valid",
        [ChainProblem.Other] = "speaks against the chain, as every member",
        [RevocationListProblem.Missing] = "shows nothing, as every member",
        [SigningKeyProblem.Unreadable] = "gives no key",
        [RenewalRefusal.DoesNotVerify] = "gives no renewed document",
        [SigningRefusalReason.DocumentUnreadable] = "gives no signature",
        [SignatureProblem.DictionaryNotSupported] = "speaks against the signature",
        [DocumentProblem.Unreadable] = "speaks against the document",
        [DocumentPart.Unreachable] = "belongs to no part, so excuses nothing",
        [RevisionChange.Changed] = "speaks against the document",
        [GoalKind.Bias] = "is the smaller",
        [GoalGrade.Optimum] = "is the strictest",
        [VarianceBoundary.None] = "decides nothing, as the whole model",
        [PercentileType.Type6] = "lies furthest out of the three",
        [Refusal.NoneForLocation] = "gives no value, as every member",
        [EstimateNote.SameValues] = "warns, as every member",
        [IntervalSource.Specimens] =
            "no interval is cautious; which is the widest is stated with each mean",
        [DriftShape.Linear] = "the simplest shape; it describes and decides nothing",
        [PaperSize.A4] = "the international size",
        [ExitCode.Done] = "the exception: the meaning of 0 is fixed by the shell",
    };

    private static readonly Type[] s_allTypes =
    [
        .. Projects.Names.SelectMany(name => Projects.Load(name).GetTypes()),
    ];

    private static readonly Type[] s_publicTypes = [.. s_allTypes.Where(type => type.IsVisible)];

    public static TheoryData<Type> Types { get; } = [.. s_publicTypes.Where(type => !type.IsEnum)];

    [Theory]
    [MemberData(nameof(Types), DisableDiscoveryEnumeration = true)]
    public void A_public_type_cannot_be_changed_after_it_was_made(Type type)
    {
        var faults = type.GetProperties(
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static
            )
            .Where(property =>
                !IsReadOnly(property) || !HoldsNoMutableCollection(property.PropertyType)
            )
            .Select(property => property.Name)
            .Concat(
                type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static)
                    .Where(field => !field.IsLiteral && !field.IsInitOnly)
                    .Select(field => field.Name)
            );

        Assert.Empty(faults);
    }

    [Fact]
    public void A_public_type_is_sealed_or_a_list_of_cases_in_its_own_project() =>
        Assert.All(
            s_publicTypes.Where(type => !type.IsSealed),
            type =>
            {
                var cases = s_allTypes.Where(other => other.BaseType == type).ToArray();
                Assert.True(type.IsAbstract && cases.Length > 1, type.FullName);
                Assert.All(cases, other => Assert.Equal(type.Assembly, other.Assembly));
            }
        );

    [Fact]
    public void A_public_structure_is_read_only() =>
        Assert.All(
            s_publicTypes.Where(type => type.IsValueType && !type.IsEnum),
            type => Assert.True(type.IsDefined(typeof(IsReadOnlyAttribute)), type.FullName)
        );

    [Fact]
    public void The_zero_member_of_every_public_enum_is_a_cautious_answer_with_its_reason() =>
        Assert.Equal(
            s_publicTypes
                .Where(type => type.IsEnum)
                .Select(type => $"{type.FullName}.{Enum.ToObject(type, 0)}")
                .Order(StringComparer.Ordinal),
            s_zeroMembers
                .Keys.Select(zero => $"{zero.GetType().FullName}.{zero}")
                .Order(StringComparer.Ordinal)
        );

    private static bool IsReadOnly(PropertyInfo property) =>
        property.SetMethod is not { IsPublic: true } setter
        || setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool HoldsNoMutableCollection(Type type) =>
        type == typeof(string)
        || !typeof(IEnumerable).IsAssignableFrom(type)
        || (
            type.IsGenericType
            && type.GetGenericTypeDefinition().Namespace == typeof(ImmutableArray<>).Namespace
        );
}
