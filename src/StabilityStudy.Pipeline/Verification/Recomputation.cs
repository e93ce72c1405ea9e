using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>What came of computing a report again from the inputs inside it.</summary>
/// <param name="Recomputed">The analysis as it should be; null where the inputs give none.</param>
/// <param name="Faults">What differs, in words; empty when nothing does.</param>
/// <param name="Pages">Whether the pages are those that this version draws.</param>
public sealed record Recomputation(
    StudyAnalysis? Recomputed,
    ImmutableArray<string> Faults,
    PagesOutcome Pages
)
{
    private const int MostFaults = 10;

    /// <summary>Whether every figure and conclusion follows from the inputs.</summary>
    public bool FiguresHold => Recomputed is not null && Faults.IsEmpty;

    /// <summary>Computes figures, conclusions and pages again.</summary>
    /// <param name="attached">The study that the report carries.</param>
    public static Recomputation Of(AttachedStudy attached)
    {
        ArgumentNullException.ThrowIfNull(attached);
        var intake = StudyIntake.ReadCanonical(attached.Inputs);
        if (!intake.TryGet(out var study))
        {
            return Failed(intake.Queries);
        }

        var inputQueries = InputQueries.Of(study.Inputs);
        if (inputQueries.Any(query => query.Severity == Severity.Stop))
        {
            return Failed(inputQueries);
        }

        var claimed = attached.Analysis;
        var recomputed = StudyAnalyzer.Analyze(
            LockSignatures.Checked(study.Inputs, attached.Inputs),
            study.Identity with
            {
                RawFiles = claimed.Identity.RawFiles,
            },
            intake.Queries,
            claimed.ToolVersion
        );
        var missing = recomputed
            .Queries.Except(claimed.Queries)
            .Select(query => $"The data query \"{query.Code}\" is missing: {query.Message}");

        // Queries about the laboratory's own files cannot be raised again: those files are not attached.
        var comparable = recomputed with
        {
            Queries = claimed.Queries,
        };
        ImmutableArray<string> faults =
        [
            .. missing
                .Concat(
                    AnalysisDifference.Of(attached.AnalysisBytes, AnalysisJson.Write(comparable))
                )
                .Take(MostFaults),
        ];
        return new Recomputation(
            comparable,
            faults,
            // Drawn from the figures as they stand in the report, which agree: their last digits may be another processor's.
            faults.IsEmpty
                ? ComparePages(attached, new AnalyzedStudy(claimed, Sources(attached, study)))
                : PagesOutcome.NotRecomputed
        );
    }

    private static Recomputation Failed(ImmutableArray<DataQuery> queries) =>
        new(
            null,
            [
                .. queries
                    .Where(query => query.Severity == Severity.Stop)
                    .Take(MostFaults)
                    .Select(query => $"{query.Source}: {query.Message}"),
            ],
            PagesOutcome.NotRecomputed
        );

    private static ImmutableArray<SignedPdf.Attachments.Attachment> Sources(
        AttachedStudy attached,
        StudyIntakeResult study
    ) => AttachedFiles.Sources(attached.Inputs, study);

    private static PagesOutcome ComparePages(AttachedStudy attached, AnalyzedStudy study)
    {
        if (study.Analysis.ToolVersion != ToolVersion.Current)
        {
            return PagesOutcome.NotRecomputed;
        }

        return new[] { PaperSize.A4, PaperSize.Letter }.Any(paper =>
            StudyPipeline.Render(study, paper).Pdf.Span.SequenceEqual(attached.FirstRevision.Span)
        )
            ? PagesOutcome.Same
            : PagesOutcome.Differ;
    }
}

/// <summary>Whether the pages of a report are those that the program draws. The zero member claims nothing.</summary>
public enum PagesOutcome
{
    /// <summary>Another version of the program made the report, or its figures differ.</summary>
    NotRecomputed,

    /// <summary>They are other ones.</summary>
    Differ,

    /// <summary>They are the same, byte for byte.</summary>
    Same,
}
