using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Notices;

namespace StabilityStudy.Cli.Commands;

/// <summary>end: the notice that ends a study without a conclusion.</summary>
internal static class EndCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var by = NoticeOptions.By();
        var reason = NoticeOptions.Reason("Why.");
        var paper = PaperOption.Create();
        var command = new Command(
            "end",
            "Write the notice that ends a study without a conclusion, ended.pdf in the study folder. Once it is signed the study is locked, analyzed and reported no more; a study that is to be concluded from fewer specimens states ended_early in study.toml instead.\n\nExample:\n  stability-study end my-study --by \"Medical Director One\" --reason \"the analyzer was replaced\""
        )
        {
            study,
            by,
            reason,
            paper,
        };
        command.SetAction(parsed =>
        {
            var folder = parsed.GetRequiredValue(study);
            var files = StudyFolder.Read(folder);
            return (int)
                NoticeRun.Write(
                    terminal,
                    StudyEnding.Of(
                        files,
                        TextOption.OneLine(parsed.GetRequiredValue(by), by.Name)!,
                        TextOption.OneLine(parsed.GetRequiredValue(reason), reason.Name)!,
                        PaperOption.Of(parsed, paper)
                    ),
                    terminal.Clock.GetLocalNow(),
                    _ =>
                        (
                            folder,
                            Path.Combine(folder, StudyBytes.EndingName),
                            [
                                new FileHash(
                                    LockFile.Name,
                                    InputDigest.Sha256(files.Files[LockFile.Name].Span)
                                ),
                            ]
                        )
                );
        });
        return command;
    }
}
