using System.Text.Json;
using System.Text.Json.Serialization;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Files.Json;

/// <summary>
/// The form of analysis.json, strict in both directions: every property is written, none may be missing, unknown or given
/// twice.
/// </summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Strict,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    WriteIndented = true,
    NewLine = "\n",
    Converters = [
        typeof(DecimalTextConverter),
        typeof(KebabCaseConverter<Cap>),
        typeof(KebabCaseConverter<CensoredSide>),
        typeof(KebabCaseConverter<ChangeScale>),
        typeof(KebabCaseConverter<Conclusion>),
        typeof(KebabCaseConverter<ControlRule>),
        typeof(KebabCaseConverter<DecisionRule>),
        typeof(KebabCaseConverter<DriftShape>),
        typeof(KebabCaseConverter<GoalGrade>),
        typeof(KebabCaseConverter<GoalKind>),
        typeof(KebabCaseConverter<LockLevel>),
        typeof(KebabCaseConverter<LockStanding>),
        typeof(KebabCaseConverter<ManufacturerStanding>),
        typeof(KebabCaseConverter<MissingReason>),
        typeof(KebabCaseConverter<PairStatus>),
        typeof(KebabCaseConverter<PercentileType>),
        typeof(KebabCaseConverter<RepeatDraws>),
        typeof(KebabCaseConverter<Severity>),
        typeof(KebabCaseConverter<StorageState>),
        typeof(KebabCaseConverter<TubePlan>),
        typeof(KebabCaseConverter<VarianceBoundary>),
        typeof(KebabCaseConverter<Verdict>),
    ]
)]
[JsonSerializable(typeof(StudyAnalysis))]
[JsonSerializable(typeof(QueryDocument))]
internal sealed partial class AnalysisJsonContext : JsonSerializerContext;
