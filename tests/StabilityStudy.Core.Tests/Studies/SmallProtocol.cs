using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Tests.Studies;

/// <summary>A protocol for one analyte, one group and one storage; tests change what they are about.</summary>
internal static class SmallProtocol
{
    public static readonly Limit Bias = new("bias", 7.5m, null, "invented");
    public static readonly Limit Each = new("each", 15m, null, "invented");

    /// <summary>Facts of which nothing hangs.</summary>
    public static StudyFacts Facts { get; } =
        new("t", "f", "q", true, "Etc/UTC", [], [], [], [], StudyFileNames.Usual, [], []);

    public static BiasCriterion MeanCriterion { get; } =
        new("mean", [new("aPTT", "bias")], [], 0.90, ChangeScale.Percent);

    public static IndividualCriterion EachCriterion { get; } =
        new("each", [new("aPTT", "each")], [], 0.95, 85m);

    public static StudyProtocol For(int specimens, params int[] hours) =>
        new(
            "TEST",
            "1",
            [.. hours.Select(At)],
            new Tolerance(TimeSpan.FromMinutes(30), TimeSpan.FromMinutes(30)),
            TimeSpan.FromHours(1),
            TubePlan.TubePerTimePoint,
            Replicates: 1,
            MinimumDays: 5,
            TimeSpan.FromMinutes(30),
            [new Signatory("author", "ran this study")],
            [
                new Storage(
                    "wb-rt",
                    StorageState.WholeBlood,
                    Cap.Closed,
                    18,
                    25,
                    TimeSpan.FromHours(1)
                ),
            ],
            [new PatientGroup("none", "No anticoagulant", specimens, null)],
            new Eligibility(90, 55, RejectClot: true, "invented"),
            [Aptt()],
            [Bias, Each],
            [MeanCriterion, EachCriterion]
        )
        {
            Controls = ControlRule.KeptElsewhere,
            ChangeSince = ChangeOrigin.Baseline,
        };

    public static TimePoint At(int hours) => new(TimeSpan.FromHours(hours));

    private static Analyte Aptt() =>
        new(
            "aPTT",
            "Activated partial thromboplastin time",
            null,
            null,
            "s",
            1,
            new WindowRule(TimeSpan.FromHours(4), "invented"),
            new WindowRule(TimeSpan.FromHours(4), "invented"),
            1.0m,
            new MeasuringInterval(20, 180),
            [40, 60],
            1,
            DriftShape.Linear
        );
}
