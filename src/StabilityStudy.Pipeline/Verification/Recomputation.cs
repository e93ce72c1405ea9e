using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>What came of computing a report again from the inputs inside it.</summary>
/// <param name="Recomputed">The analysis as this version computes it; null where the inputs give none, or a later version made the report.</param>
/// <param name="Faults">What does not follow from the inputs, in words; empty when nothing does.</param>
/// <param name="Pages">Whether the pages are those that this version draws.</param>
internal sealed record Recomputation(
    StudyAnalysis? Recomputed,
    ImmutableArray<string> Faults,
    PagesOutcome Pages
)
{
    /// <summary>How the version that made the report stands to this one.</summary>
    public MadeBy MadeBy { get; init; }

    /// <summary>What only one of two versions has, so that it could not be compared; the pages are not named among it.</summary>
    public ImmutableArray<string> NotRecomputed { get; init; } = [];

    /// <summary>What comes out otherwise under the rules of this version, in words.</summary>
    public ImmutableArray<string> UnderOtherRules { get; init; } = [];

    /// <summary>Whether every figure and conclusion that could be computed again follows from the inputs.</summary>
    public bool FiguresHold => Recomputed is not null && Faults.IsEmpty;

    /// <summary>Computes figures, conclusions and pages again.</summary>
    /// <param name="attached">The study that the report carries.</param>
    public static Recomputation Of(AttachedStudy attached) =>
        Of(
            attached,
            version => ReleasedVersion.TryFind(version, out var released) ? released : null
        );

    /// <summary>The same with other released versions.</summary>
    internal static Recomputation Of(
        AttachedStudy attached,
        Func<string, ReleasedVersion?> releasedAs
    )
    {
        ArgumentNullException.ThrowIfNull(attached);
        var stated = attached.Stated;
        if (ReleasedVersion.IsLater(stated.ToolVersion))
        {
            return new Recomputation(null, [], PagesOutcome.NotRecomputed)
            {
                MadeBy = MadeBy.LaterVersion,
            };
        }

        if (releasedAs(stated.ToolVersion) is not { } released)
        {
            return Failed(
                $"The report says that version {stated.ToolVersion} made it, which is no released version whose reports can be computed again."
            );
        }

        if ((stated.Format, stated.Rules) != (released.Format, released.Rules))
        {
            return Failed(
                FormattableString.Invariant(
                    $"The report states format {stated.Format} and rules {stated.Rules}, and version {released.Version} has format {released.Format} and rules {released.Rules}."
                )
            );
        }

        var isSame = released.Version == ReleasedVersion.Current.Version;
        var intake = StudyIntake.ReadCanonical(attached.Inputs, isOfOtherVersion: !isSame);
        if (!intake.TryGet(out var study))
        {
            return Failed(WhyNot(intake.Queries));
        }

        var outcome = StudyAnalyzer.AnalyzeSound(
            LockSignatures.Checked(study.Inputs, attached.Inputs),
            study.Identity with
            {
                RawFiles = stated.RawFiles,
            },
            [.. intake.Queries, .. stated.OwnFileQueries],
            stated.ToolVersion
        );
        return outcome.TryGet(out var recomputed)
            ? Compare(attached, study, released, recomputed)
            : Failed(WhyNot(outcome.Queries));
    }

    private static Recomputation Compare(
        AttachedStudy attached,
        StudyIntakeResult study,
        ReleasedVersion released,
        StudyAnalysis recomputed
    )
    {
        var stated = attached.Stated;
        var computed = AnalysisJson.WriteInForm(recomputed, stated.Format);
        var current = ReleasedVersion.Current;
        var version =
            released.Version == current.Version ? ComparedVersion.Same
            : released.Rules == current.Rules ? ComparedVersion.OtherWithSameRules
            : ComparedVersion.OtherWithOtherRules;
        var differences = AnalysisJson.Compare(
            stated,
            computed,
            version,
            released.QueryCodes.Contains,
            current.QueryCodes.Contains,
            name => released.Properties.Contains(name)
        );
        var isSame = version == ComparedVersion.Same;
        ImmutableArray<string> faults =
        [
            .. OwnFileStatements.Faults(attached.Inputs, study, stated),
            .. differences.Faults,
            .. isSame
            && differences.Faults.IsEmpty
            && !StatedAnalysis.IsWrittenAs(attached.AnalysisBytes, computed)
                ?
                [
                    $"The attached {AnalysisJson.FileName} is written otherwise than by the program.",
                ]
                : ImmutableArray<string>.Empty,
        ];
        return new Recomputation(
            recomputed,
            faults,
            isSame && faults.IsEmpty
                ? ComparePages(attached, recomputed, study)
                : PagesOutcome.NotRecomputed
        )
        {
            MadeBy = version switch
            {
                ComparedVersion.Same => MadeBy.ThisVersion,
                ComparedVersion.OtherWithSameRules => MadeBy.VersionWithSameRules,
                ComparedVersion.OtherWithOtherRules => MadeBy.VersionWithOtherRules,
            },
            NotRecomputed = [.. differences.NotRecomputed, .. UnknownFiles(attached, study)],
            UnderOtherRules = [.. differences.UnderOtherRules],
        };
    }

    /// <summary>Attached files that this version does not read; in a report of this version the pages show that there are none.</summary>
    private static IEnumerable<string> UnknownFiles(
        AttachedStudy attached,
        StudyIntakeResult study
    ) =>
        attached
            .Inputs.Files.Keys.Except(study.Identity.Inputs.Select(file => file.Name))
            .Select(name => $"the attached file {name}");

    private static Recomputation Failed(string why) => new(null, [why], PagesOutcome.NotRecomputed);

    private static string WhyNot(ImmutableArray<DataQuery> queries)
    {
        var stop = queries.First(query => query.Severity == Severity.Stop);
        return $"The attached data cannot be analyzed: {stop.Source}: {stop.Message}";
    }

    /// <summary>In which forms a report is drawn, the usual one first.</summary>
    private static ImmutableArray<(PaperSize Paper, bool Full)> Forms { get; } =
    [
        (PaperSize.A4, false),
        (PaperSize.Letter, false),
        (PaperSize.A4, true),
        (PaperSize.Letter, true),
    ];

    private static PagesOutcome ComparePages(
        AttachedStudy attached,
        StudyAnalysis recomputed,
        StudyIntakeResult study
    )
    {
        var analyzed = new AnalyzedStudy(recomputed, AttachedFiles.Sources(attached.Inputs, study));
        return Forms.Any(form =>
            StudyPipeline
                .Render(analyzed, form.Paper, form.Full, attached.AnalysisBytes)
                .Pdf.Span.SequenceEqual(attached.FirstRevision.Span)
        )
            ? PagesOutcome.Same
            : PagesOutcome.Differ;
    }
}

/// <summary>Which version of the program made a report. The zero member claims nothing.</summary>
internal enum MadeBy
{
    /// <summary>None that is known, or one whose report cannot be computed again.</summary>
    Unknown,

    /// <summary>A later one than this.</summary>
    LaterVersion,

    /// <summary>An earlier one that concludes by other rules.</summary>
    VersionWithOtherRules,

    /// <summary>An earlier one that concludes by the same rules.</summary>
    VersionWithSameRules,

    /// <summary>This one.</summary>
    ThisVersion,
}

/// <summary>Whether the pages of a report are those that the program draws. The zero member claims nothing.</summary>
internal enum PagesOutcome
{
    /// <summary>Another version of the program made the report, or its figures differ.</summary>
    NotRecomputed,

    /// <summary>They are other ones.</summary>
    Differ,

    /// <summary>They are the same, byte for byte.</summary>
    Same,
}
