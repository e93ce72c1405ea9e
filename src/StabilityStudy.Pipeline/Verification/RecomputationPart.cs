using StabilityStudy.Core.Criteria;
using StabilityStudy.Files.Json;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Whether figures, conclusions and pages follow from the data in the file, in words.</summary>
internal static class RecomputationPart
{
    public const string Question =
        "Do figures, conclusions and pages follow from the data in the file?";

    private const int MostNamed = 10;

    private const string NotInTheFile =
        "What the report says about the laboratory's own files and record, which are not in it, cannot be checked here.";

    public static VerifiedPart Of(Recomputation recomputed, StatedAnalysis stated) =>
        recomputed switch
        {
            { MadeBy: MadeBy.LaterVersion } => new VerifiedPart(
                Question,
                PartOutcome.NotChecked,
                [
                    $"Not computed again: the report was made by version {stated.ToolVersion}, which is later than this one, {ToolVersion.Current}. Use version {stated.ToolVersion} or a later one.",
                ]
            ),
            { FiguresHold: false } => new VerifiedPart(
                Question,
                PartOutcome.Fails,
                Named(recomputed.Faults)
            ),
            { MadeBy: MadeBy.ThisVersion } => OfThisVersion(recomputed.Pages),
            _ => new VerifiedPart(
                Question,
                PartOutcome.NotChecked,
                OfOtherVersion(recomputed, stated)
            ),
        };

    private static VerifiedPart OfThisVersion(PagesOutcome pages)
    {
        const string figures =
            "Every figure and conclusion of the first revision was computed again from the data in it and is the same. "
            + NotInTheFile;
        return pages == PagesOutcome.Same
            ? new VerifiedPart(
                Question,
                PartOutcome.Holds,
                [figures, "The pages were drawn again and are the same, byte for byte."]
            )
            : new VerifiedPart(
                Question,
                PartOutcome.Fails,
                ["The pages are not those that this program draws from the data.", figures]
            );
    }

    private static ImmutableArray<string> OfOtherVersion(
        Recomputation recomputed,
        StatedAnalysis stated
    )
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (!recomputed.UnderOtherRules.IsEmpty)
        {
            sentences.Add(
                FormattableString.Invariant(
                    $"Concluded under rules {stated.Rules}; under rules {DecisionRules.Number} of this version something comes out otherwise: have it reviewed."
                )
            );
            sentences.AddRange(Named(recomputed.UnderOtherRules));
        }

        sentences.Add(
            $"Pages not recomputed: the report was made by version {stated.ToolVersion}, and this is version {ToolVersion.Current}."
        );
        if (!recomputed.NotRecomputed.IsEmpty)
        {
            sentences.Add(
                "Not compared, because the report states it and this version does not, or the reverse; version "
                    + stated.ToolVersion
                    + " compares it:"
            );
            sentences.AddRange(Named(recomputed.NotRecomputed));
        }

        sentences.Add(
            "Everything else of the first revision was computed again from the data in it and is the same. "
                + NotInTheFile
        );
        return sentences.ToImmutable();
    }

    private static ImmutableArray<string> Named(ImmutableArray<string> all) =>
        all.Length <= MostNamed
            ? all
            :
            [
                .. all.Take(MostNamed),
                FormattableString.Invariant($"And {all.Length - MostNamed} more."),
            ];
}
