using System.Text;
using StabilityStudy.Core.Inspection;
using StabilityStudy.Core.Register;
using StabilityStudy.Core.Text;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Inspection;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Register;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Inspection;

/// <summary>What a register folder holds: its PDF files, the folders of studies in it, and the files that are copied with these.</summary>
/// <param name="Pdfs">Every PDF file, named as below the register.</param>
/// <param name="Studies">Study folders with a lock, named as below the register.</param>
public sealed record RegisterFiles(
    ImmutableArray<InspectionFile> Pdfs,
    ImmutableArray<(string Folder, StudyBytes Files)> Studies
)
{
    /// <summary>Protocols and locks of these studies.</summary>
    public ImmutableArray<InspectionFile> Locks { get; init; } = [];
}

/// <summary>
/// A folder for an inspection, made from the signed files of a register and nothing else: the files themselves, what verification finds in each, the register
/// as of a day, the documents of the bench, and an index. The same files, terms and trust give the same bytes, so that the folder can be checked by making it again.
/// </summary>
/// <param name="Files">All files of the folder.</param>
/// <param name="Register">The register.</param>
/// <param name="Verified">What verification found of each PDF file, by its name in the folder.</param>
public sealed record InspectionPack(
    ImmutableArray<InspectionFile> Files,
    WindowRegister Register,
    ImmutableArray<(string Name, ReportVerification Found)> Verified
)
{
    private const int TextWidth = 100;

    private static readonly ImmutableArray<ApprovedDocumentKind> s_documents =
    [
        .. Enum.GetValues<ApprovedDocumentKind>(),
    ];

    /// <summary>How a folder is made now.</summary>
    /// <param name="asOf">The day as of which the register is shown.</param>
    /// <param name="options">Whom to trust, and when is verified.</param>
    /// <param name="keepYears">Years for which records are kept after their last use.</param>
    public static InspectionTerms Terms(DateOnly asOf, VerificationOptions options, int keepYears)
    {
        ArgumentNullException.ThrowIfNull(options);
        return new(
            asOf,
            options.Now ?? throw new ArgumentException("No time is given.", nameof(options)),
            ToolVersion.Current,
            keepYears
        )
        {
            Trusted = Certificates(options.Anchors),
            TrustedForTime = Certificates(options.TimeAnchors),
        };
    }

    /// <summary>Makes the folder.</summary>
    /// <param name="sources">The register.</param>
    /// <param name="terms">How it is made.</param>
    /// <param name="options">Whom to trust, and when is verified.</param>
    /// <param name="progress">Is told what is being done.</param>
    public static InspectionPack Of(
        RegisterFiles sources,
        InspectionTerms terms,
        VerificationOptions options,
        Action<string> progress
    ) => Of(sources, terms, options, progress, new RememberedRecomputation());

    internal static InspectionPack Of(
        RegisterFiles sources,
        InspectionTerms terms,
        VerificationOptions options,
        Action<string> progress,
        RememberedRecomputation recomputed
    )
    {
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentNullException.ThrowIfNull(progress);
        var verified = sources
            .Pdfs.OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file =>
            {
                progress("Verifying " + file.Name);
                return (file, Found: recomputed.Verify(file, options));
            })
            .ToImmutableArray();
        var register = WindowRegister.Of([
            .. verified.Select(item =>
                RegisterReading.Entry(item.file.Name, item.file.Bytes, item.Found)
            ),
            .. sources
                .Studies.Select(study => RegisterReading.ReadFolder(study.Folder, study.Files))
                .OfType<RegisterEntry>(),
        ]);
        progress("Drawing the documents of the bench");
        var paper = terms.IsOnLetter ? PaperSize.Letter : PaperSize.A4;
        var rules = BenchDocuments.RulesOf(register, terms.AsOf, null, null, terms.SpinTakes);
        var ready = rules.Where(item => item.Obstacles.IsEmpty).ToImmutableArray();
        var bench = rules
            .Select(item =>
                (
                    Rules: item,
                    Files: item.Obstacles.IsEmpty
                        ? BenchDocuments.Files(item, ready, s_documents, paper)
                        : []
                )
            )
            .ToImmutableArray();
        ImmutableArray<InspectionFile> listed =
        [
            new(InspectionToml.Name, InspectionToml.Write(terms)),
            new(InspectionFiles.Register, RegisterCsv.Write(register, terms.AsOf)),
            .. sources
                .Pdfs.Concat(sources.Locks)
                .Select(file => file with { Name = InspectionFiles.SignedFolder + file.Name }),
            .. bench.SelectMany(item =>
                item.Files.Select(file => new InspectionFile(
                    InspectionFiles.Bench + file.Name,
                    file.Bytes
                ))
            ),
            .. verified.Select(item => new InspectionFile(
                TextNameOf(item.file.Name),
                Encoding.UTF8.GetBytes(
                    string.Join('\n', VerificationText.Lines(item.Found, TextWidth)) + "\n"
                )
            )),
        ];
        var list = InspectionFiles.Listed(listed);
        var written = InspectionFiles.WriteList(list);
        progress("Drawing the index");
        var model = InspectionIndex.Build(
            new InspectionContents(terms, register, InputDigest.Sha256(written.Span), list)
            {
                SignedFiles =
                [
                    .. verified.Select(item => Inspected(item.file.Name, item.Found, register)),
                ],
                Reports =
                [
                    .. verified.SelectMany(item => Computed(item.file, item.Found, register)),
                ],
                Bench =
                [
                    .. bench.Select(item => new InspectedBench(
                        $"{item.Rules.Analyte} in {item.Rules.Storage}",
                        [.. item.Files.Select(file => InspectionFiles.Bench + file.Name)],
                        item.Rules.Obstacles.IsEmpty
                            ? null
                            : AnswerWords.Sentence(item.Rules.Obstacles[0])
                    )),
                ],
            }
        );
        var index = DrawnDocument.Finish(PdfDrawing.Draw(model), model.Title).Pdf;
        return new InspectionPack(
            [
                .. listed,
                new InspectionFile(InspectionFiles.List, written),
                new InspectionFile(InspectionFiles.Index, index),
            ],
            register,
            [
                .. verified.Select(item =>
                    (InspectionFiles.SignedFolder + item.file.Name, item.Found)
                ),
            ]
        );
    }

    /// <summary>"verification/signed.pdf.txt".</summary>
    internal static string TextNameOf(string name) => InspectionFiles.Verification + name + ".txt";

    internal static ImmutableArray<TrustedCertificate> Certificates(TrustAnchors? anchors) =>
        [
            .. (anchors?.Facts ?? [])
                .Select(facts => new TrustedCertificate(
                    UnseenCharacters.Shown(facts.Name),
                    facts.Sha256.ToLowerInvariant()
                ))
                .Distinct()
                .OrderBy(item => item.Sha256, StringComparer.Ordinal),
        ];

    private static InspectedFile Inspected(
        string name,
        ReportVerification found,
        WindowRegister register
    ) =>
        new(
            InspectionFiles.SignedFolder + name,
            found.Document switch
            {
                DocumentKind.Report => found.StudyCode is null
                    ? "no report that can be read"
                    : $"report {register.Reports.First(report => report.File == name).Name}",
                DocumentKind.Protocol => $"protocol document {found.StudyCode}",
                DocumentKind.Notice =>
                    $"{NoticeWords.Title(found.Notice!.Kind).ToLowerInvariant()}, {NoticeWords.Subject(found.Notice)}",
            },
            [
                .. found.Parts.Select(part => new InspectedPart(
                    part.Question,
                    VerificationText.Word(part.Outcome).ToLowerInvariant(),
                    part.Outcome == PartOutcome.Holds,
                    part.Sentences
                )),
            ]
        );

    private static IEnumerable<InspectedReport> Computed(
        InspectionFile file,
        ReportVerification found,
        WindowRegister register
    ) =>
        found.Analysis is { } analysis
        && register.Reports.FirstOrDefault(report => report.File == file.Name) is { } report
        && PdfDocumentReader.Read(file.Bytes).TryGet(out var pdf, out _)
            ? [new InspectedReport(report, analysis, new SectionPages(OutlinePages.Of(pdf)))]
            : [];
}

/// <summary>Verifies files and remembers what was computed again, which the time of verification does not change.</summary>
internal sealed class RememberedRecomputation
{
    private readonly Dictionary<string, Recomputation> _known = [];

    public ReportVerification Verify(InspectionFile file, VerificationOptions options) =>
        ReportVerifier.Verify(
            file.Bytes,
            options,
            null,
            study =>
                _known.TryGetValue(file.Name, out var known)
                    ? known
                    : _known[file.Name] = Recomputation.Of(study)
        );
}
