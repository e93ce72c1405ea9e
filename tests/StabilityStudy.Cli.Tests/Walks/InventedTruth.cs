using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>What waiting truly does to invented specimens.</summary>
/// <param name="ChangePercent">True mean change of an analyte in a group, percent of the value at baseline; the same at every time.</param>
/// <param name="TurnedShare">Share of specimens whose class is another one after waiting.</param>
internal sealed record InventedTruth(
    Func<Analyte, PatientGroup, double> ChangePercent,
    double TurnedShare
)
{
    /// <summary>SD of the change among specimens, percent: that which plan supposes where a protocol states none.</summary>
    public const decimal UsualSdPercent = 3;

    /// <summary>Waiting changes nothing.</summary>
    public static InventedTruth NoChange { get; } = new((_, _) => 0, 0);

    /// <summary>Every mean changes by twice its own limit, to the side that does harm where a criterion names one, and one class of three turns.</summary>
    public static InventedTruth FarBeyond(StudyProtocol protocol) =>
        new(
            (analyte, group) =>
                2
                * (double)(
                    protocol
                        .Applying(analyte.Id, group.Id)
                        .Where(item => item.Criterion.JudgesMean)
                        .Max(item => item.Limit?.Percent)
                    ?? 10
                )
                * (
                    analyte.Unit is "s" or "{INR}" && group.Anticoagulant != Anticoagulant.Heparin
                        ? 1
                        : -1
                ),
            0.34
        );
}
