using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Starting;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Commands;

/// <summary>start --repeat: a study folder whose protocol is made from a signed report.</summary>
internal static class StartRepeat
{
    private const string UsualReason = "a new lot";

    public static ExitCode Run(
        Terminal terminal,
        StartOptions options,
        string report,
        TrustInput trust,
        string? folder,
        RepeatTier tier,
        string? reason
    )
    {
        NewFolder.RequireFree(options.Folder);
        if (reason is null && tier == RepeatTier.Full)
        {
            throw new UsageException(
                "--tier full takes --reason: what changed, such as a new analyzer."
            );
        }

        var name = Path.GetFileName(report);
        var bytes = ReportFile.Read(report);
        var now = terminal.Clock.GetUtcNow();
        var trusted = trust.Read(now);
        terminal.Progress("Verifying " + name);
        var repeated =
            RepeatStudy.Of(
                name,
                bytes,
                trusted,
                Standing(terminal, folder, report, trust, trusted, now),
                DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime),
                tier,
                reason ?? UsualReason,
                out var fault
            )
            ?? throw new UsageException(
                $"{report} cannot be repeated: {fault.TrimEnd('.')}. Nothing was written."
            );
        var code = options.Code ?? repeated.Original.Code;
        var study = StudyOf(options, repeated, tier);
        Require("--code", StartAnswers.ProblemOfCode(code));
        var started = StartCommand.Write(options.Folder, repeated.Protocol.Text, code, study);
        if (started.Protocol.Repeat is null)
        {
            throw new InvalidOperationException("The protocol does not name the original.");
        }

        var output = terminal.Out;
        output.WriteLine(
            $"{(tier == RepeatTier.Reduced ? "Reduced repeat" : "Full repeat")} of {repeated.Report.Name} (inputs {repeated.Report.InputDigest}), version {started.Protocol.Version}."
        );
        foreach (var analyte in started.Protocol.Analytes)
        {
            foreach (
                var group in started.Protocol.Groups.Where(group =>
                    analyte.Groups.IsEmpty || analyte.Groups.Contains(group.Id)
                )
            )
            {
                output.WriteLine(
                    $"  {analyte.Id}, {group.Id}: tested again after {string.Join(", ", started.Protocol.TimePointsOf(analyte, group.Id))}"
                );
            }
        }

        foreach (var note in repeated.Notes)
        {
            WrappedText.Write(terminal, "! " + note, "  ");
        }

        foreach (var number in repeated.Protocol.Numbers)
        {
            WrappedText.Write(terminal, ReducedNumberWords.Of(number));
        }

        if (!repeated.Protocol.Left.IsEmpty)
        {
            output.WriteLine("Not repeated:");
            foreach (var line in repeated.Protocol.Left)
            {
                WrappedText.Write(terminal, line);
            }
        }

        output.WriteLine();
        StartCommand.Tell(terminal, options.Folder, started, study);
        return ExitCode.Done;
    }

    private static NewStudy StudyOf(StartOptions options, RepeatStudy repeated, RepeatTier tier)
    {
        var facts = repeated.Facts;
        var title = TextOption.OneLine(options.Title, "--title");
        var zone = options.TimeZone ?? facts.TimeZone ?? StartAnswers.NoZone;
        Require("--time-zone", StartAnswers.ProblemOfZone(zone));
        return new(
            repeated.Report.Name,
            Checked("--title", title ?? Repeated(facts.Title, tier), NewStudy.LongestTitle),
            Checked(
                "--facility",
                TextOption.OneLine(options.Facility, "--facility") ?? facts.Facility,
                NewStudy.LongestTitle
            ),
            Checked(
                "--question",
                TextOption.OneLine(options.Question, "--question") ?? Asked(repeated, tier),
                NewStudy.LongestQuestion
            ),
            zone == StartAnswers.NoZone ? null : zone,
            options.People.IsEmpty
                ? facts.People
                : [.. options.People.Select(CodedOption.PersonOf)],
            options.Instruments.IsEmpty
                ? facts.Instruments
                : [.. options.Instruments.Select(CodedOption.InstrumentOf)],
            StartAnswers.GivenLots(
                options,
                [.. repeated.Original.Analytes.Select(analyte => analyte.Id)]
            ),
            options.Invented || facts.Invented
        );
    }

    /// <summary>The register in which the report stands.</summary>
    private static WindowRegister Standing(
        Terminal terminal,
        string? folder,
        string report,
        TrustInput trust,
        VerificationOptions trusted,
        DateTimeOffset now
    )
    {
        var cache = VerificationCache.Open(terminal.CacheFolder, trust.Digest(), now);
        return folder is null
            ? RegisterFolder.Read(
                Path.GetDirectoryName(Path.GetFullPath(report)) ?? ".",
                trusted,
                terminal,
                cache,
                _ => true,
                depth: 0
            )
            : RegisterFolder.Read(folder, trusted, terminal, cache, _ => true);
    }

    private static string Asked(RepeatStudy repeated, RepeatTier tier) =>
        tier == RepeatTier.Reduced
            ? $"Do the approved windows of {repeated.Report.Name} hold with a new lot?"
            : repeated.Facts.Question;

    /// <summary>The title of the original, which says that it is repeated as far as there is room.</summary>
    private static string Repeated(string title, RepeatTier tier)
    {
        var longer =
            title + (tier == RepeatTier.Reduced ? ": repeat with a new lot" : ": repeated");
        return longer.Length <= NewStudy.LongestTitle ? longer : title;
    }

    private static string Checked(string option, string? text, int longest)
    {
        Require(option, StartAnswers.ProblemOfText(text ?? "", longest));
        return text is { Length: > 0 }
            ? text
            : throw new UsageException($"{option} is needed: the original does not state it.");
    }

    private static void Require(string option, string? problem)
    {
        if (problem is not null)
        {
            throw new UsageException($"{option}: {problem}");
        }
    }
}
