using StabilityStudy.Statistics.Drift;
using CoreDrift = StabilityStudy.Core.Planning.PublishedDrift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>A drift that the literature reports, in words, as context.</summary>
/// <param name="Says">The published figures: "the aPTT of unfrozen specimens prolonged by …".</param>
/// <param name="PercentAfter">Change in percent since collection after hours.</param>
internal sealed record PublishedDrift(string Says, Func<double, double> PercentAfter)
{
    public const string Source =
        "a 2025 consensus of 43 published studies (Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117)";

    /// <summary>What is published for specimens without anticoagulant stands beside such a group only; null for others.</summary>
    public static PublishedDrift? For(SequenceNames names) =>
        CoreDrift.For(names.Origin, names.Analyte, names.Group, names.Storage) is { } drift
            ? new(InWords(drift), drift.PercentAfter)
            : null;

    private static string InWords(CoreDrift drift) =>
        drift switch
        {
            { IsFrozen: true } => "PT and aPTT of frozen plasma prolonged by 0.8 % a month",
            { Shape: DriftShape.Logarithmic } =>
                "the aPTT of unfrozen specimens prolonged by 6.1 % at 6 h and 10 % at 24 h, rising with the logarithm of time",
            _ =>
                "the PT of unfrozen specimens prolonged by 2.9 % a day, in proportion to time, by a model whose strength it calls limited",
        };
}
