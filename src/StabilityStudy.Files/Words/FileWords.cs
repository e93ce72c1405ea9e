using System.Text.Json;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Looks;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Files.Words;

/// <summary>Every word that has a meaning in the study files.</summary>
internal static class FileWords
{
    public static readonly WordSet<TubePlan> TubePlans = new(
        ("a tube per time point", TubePlan.TubePerTimePoint),
        ("aliquots", TubePlan.Aliquots),
        ("one tube retested", TubePlan.OneTubeRetested)
    );

    public static readonly WordSet<StorageState> States = new(
        ("whole blood", StorageState.WholeBlood),
        ("spun on cells", StorageState.SpunOnCells),
        ("separated plasma", StorageState.SeparatedPlasma)
    );

    public static readonly WordSet<Cap> Caps = new(("closed", Cap.Closed), ("open", Cap.Open));

    public static readonly WordSet<Anticoagulant> Anticoagulants = new(
        ("none", Anticoagulant.None),
        ("heparin", Anticoagulant.Heparin),
        ("vitamin K antagonist", Anticoagulant.VitaminKAntagonist),
        ("other", Anticoagulant.Other)
    );

    public static readonly WordSet<ChangeScale> Scales = new(
        ("percent", ChangeScale.Percent),
        ("absolute", ChangeScale.Absolute),
        ("share", ChangeScale.Share),
        ("log-ratio", ChangeScale.LogRatio)
    );

    /// <summary>The names of the kinds, as analysis.json writes them too: DecisionLevel is "decision-level".</summary>
    public static readonly WordSet<CriterionKind> CriterionKinds = new([
        .. Enum.GetValues<CriterionKind>()
            .Select(kind => (JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString()), kind)),
    ]);

    public static readonly WordSet<DecisionRule> DecisionRules = new(
        ("confidence", DecisionRule.Confidence),
        ("point only", DecisionRule.PointOnly)
    );

    public static readonly WordSet<SideDirection> SideDirections = new(
        ("both", SideDirection.Both),
        ("down", SideDirection.Down),
        ("up", SideDirection.Up)
    );

    public static readonly WordSet<ChanceOfSupport> Chances = new(
        ("likely", ChanceOfSupport.Likely),
        ("open", ChanceOfSupport.Open),
        ("doubtful", ChanceOfSupport.Doubtful),
        ("unlikely", ChanceOfSupport.Unlikely),
        ("out of reach", ChanceOfSupport.OutOfReach)
    );

    public static readonly WordSet<GoalGrade> GoalGrades = new(
        ("optimum", GoalGrade.Optimum),
        ("desirable", GoalGrade.Desirable),
        ("minimum", GoalGrade.Minimum)
    );

    public static readonly WordSet<GoalKind> GoalKinds = new(
        ("bias", GoalKind.Bias),
        ("total error", GoalKind.TotalError)
    );

    public static readonly WordSet<ControlRule> ControlRules = new(
        ("every run", ControlRule.EveryRun),
        ("kept elsewhere", ControlRule.KeptElsewhere)
    );

    public static readonly WordSet<RepeatDraws> RepeatDrawRules = new(
        ("left out", RepeatDraws.LeftOut),
        ("one cluster", RepeatDraws.OneCluster)
    );

    public static readonly WordSet<RepeatTier> RepeatTiers = new(
        ("full", RepeatTier.Full),
        ("reduced", RepeatTier.Reduced)
    );

    public static readonly WordSet<ChangeOrigin> ChangeOrigins = new(
        ("collection", ChangeOrigin.Collection),
        ("baseline", ChangeOrigin.Baseline)
    );

    public static readonly WordSet<TimeOrigin> TimeOrigins = new(
        ("collection", TimeOrigin.Collection),
        ("thawing", TimeOrigin.Thawing)
    );

    public static readonly WordSet<DriftShape> DriftShapes = new(
        ("linear", DriftShape.Linear),
        ("logarithmic", DriftShape.Logarithmic),
        ("quadratic", DriftShape.Quadratic)
    );

    public static readonly WordSet<DiscardTubeRule> DiscardTubeRules = new(
        ("always", DiscardTubeRule.Always),
        ("before a winged set", DiscardTubeRule.BeforeWingedSet),
        ("never", DiscardTubeRule.Never)
    );

    public static readonly WordSet<DrawOrder> DrawOrders = new(
        ("first", DrawOrder.First),
        ("first, or after a blood culture", DrawOrder.FirstOrAfterBloodCulture)
    );

    public static readonly WordSet<DiscardTube> DiscardTubes = new(
        ("", DiscardTube.NotRecorded),
        ("none", DiscardTube.None),
        ("citrate", DiscardTube.Citrate),
        ("plain", DiscardTube.Plain),
        ("other additive", DiscardTube.OtherAdditive)
    );

    public static readonly WordSet<DrawnBefore> DrawnBefore = new(
        ("", Core.Specimens.DrawnBefore.NotRecorded),
        ("nothing", Core.Specimens.DrawnBefore.Nothing),
        ("blood culture", Core.Specimens.DrawnBefore.BloodCulture),
        ("other tube", Core.Specimens.DrawnBefore.OtherTube)
    );

    public static readonly WordSet<TransportState> Transports = new(
        ("", TransportState.NotRecorded),
        ("room temperature", TransportState.RoomTemperature),
        ("refrigerated", TransportState.Refrigerated),
        ("on ice", TransportState.OnIce)
    );

    public static readonly WordSet<SpecimenMaterial> Materials = new(
        ("", SpecimenMaterial.NotRecorded),
        ("citrate", SpecimenMaterial.Citrate),
        ("serum", SpecimenMaterial.Serum),
        ("other anticoagulant", SpecimenMaterial.OtherAnticoagulant)
    );

    /// <summary>Whether a clot makes a specimen unusable.</summary>
    public static readonly WordSet<bool> ClotRules = new(("reject", true), ("accept", false));

    public static readonly WordSet<Hemolysis> HemolysisGrades = new(
        ("", Hemolysis.NotRecorded),
        ("none", Hemolysis.None),
        ("slight", Hemolysis.Slight),
        ("moderate", Hemolysis.Moderate),
        ("gross", Hemolysis.Gross)
    );

    public static readonly WordSet<ClotCheck> ClotChecks = new(
        ("", ClotCheck.NotRecorded),
        ("no", ClotCheck.No),
        ("yes", ClotCheck.Yes)
    );

    public static readonly WordSet<Origin> Origins = new(
        ("", Origin.NotRecorded),
        ("native", Origin.Native),
        ("spiked", Origin.Spiked),
        ("pool", Origin.Pool)
    );

    public static readonly WordSet<ControlKind> ControlKinds = new(
        ("control", ControlKind.Control),
        ("bridging plasma", ControlKind.BridgingPlasma),
        ("", ControlKind.Control)
    );

    /// <summary>What a flag of the instrument means.</summary>
    public static readonly WordSet<FlagMeaning> FlagMeanings = new(
        ("harmless", FlagMeaning.Harmless),
        ("failed", FlagMeaning.Failed),
        ("reportable with note", FlagMeaning.ReportableWithNote)
    );

    /// <summary>What becomes of a result with a status.</summary>
    public static readonly WordSet<StatusMeaning> StatusMeanings = new(
        ("result", StatusMeaning.Result),
        ("no result", StatusMeaning.NoResult),
        ("left aside", StatusMeaning.LeftAside)
    );

    public static readonly WordSet<CollectionState> CollectionStates = new(
        ("incomplete", CollectionState.Incomplete),
        ("ended early", CollectionState.EndedEarly),
        ("complete", CollectionState.Complete)
    );

    public static readonly WordSet<Conclusion> Conclusions = new(
        ("inconclusive", Conclusion.Inconclusive),
        ("not assessed", Conclusion.NotAssessed),
        ("not reached", Conclusion.NotReached),
        ("not supported", Conclusion.NotSupported),
        ("supported", Conclusion.Supported)
    );

    /// <summary>Words for "no result", compared without regard to case.</summary>
    public static readonly WordSet<MissingReason> MissingReasons = new(
        ("", MissingReason.NoReportableResult),
        ("NA", MissingReason.NoReportableResult),
        ("CLOT", MissingReason.Clot),
        ("FIBRIN", MissingReason.Fibrin),
        ("HEMOLYSIS", MissingReason.Hemolysis),
        ("ERROR", MissingReason.InstrumentError),
        ("QNS", MissingReason.QuantityNotSufficient),
        ("NT", MissingReason.NotTested),
        ("STORAGE", MissingReason.StorageFailure)
    );
}
