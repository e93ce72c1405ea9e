using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Canonical;

/// <summary>
/// The fingerprint of what a look shows: the canonical data and the decisions about them. The protocol is no part of it,
/// since its changes are on record by their locks, and neither are earlier looks, so that looking changes nothing, nor the order in which a
/// facility keeps its rows.
/// </summary>
internal static class DataDigest
{
    private const string Decisions = "decisions";

    /// <summary>SHA-256 as <see cref="InputDigest.Compute"/>, over the data files without their source rows and a list of the decisions.</summary>
    /// <param name="files">The hash of each data file without the source rows.</param>
    /// <param name="facts">What study.toml decides about the data.</param>
    public static string Of(ImmutableArray<FileHash> files, StudyFacts facts) =>
        InputDigest.Compute([
            .. files,
            new FileHash(
                Decisions,
                InputDigest.Sha256(
                    Encoding.UTF8.GetBytes(
                        string.Concat(Lines(facts).Order(StringComparer.Ordinal))
                    )
                )
            ),
        ]);

    private static IEnumerable<string> Lines(StudyFacts facts) =>
        [
            .. facts.Exclusions.Select(item =>
                FormattableString.Invariant(
                    $"exclusion {item.Specimen} {item.Analyte} {item.TimePoint} {item.On:yyyy-MM-dd} {item.Time:HH:mm}\n"
                )
            ),
            .. facts.Reruns.Select(item =>
                FormattableString.Invariant(
                    $"rerun {item.Specimen} {item.Analyte} {item.TimePoint} {item.Reason} {item.On:yyyy-MM-dd}\n"
                )
            ),
            .. facts.NotDrawn.Select(item =>
                FormattableString.Invariant(
                    $"not_drawn {item.Specimen} {item.TimePoint} {item.Storage} {item.On:yyyy-MM-dd}\n"
                )
            ),
            .. facts.ClockCorrections.Select(item =>
                FormattableString.Invariant(
                    $"clock_correction {item.Where} {item.Minutes} {item.On:yyyy-MM-dd}\n"
                )
            ),
            .. facts.EndedEarly is { } end
                ? [FormattableString.Invariant($"ended_early {end.On:yyyy-MM-dd}\n")]
                : ImmutableArray<string>.Empty,
        ];
}
