using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>check: how far the collection is, then every data query; no change shown.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var asOf = new Option<string?>("--as-of")
        {
            Description =
                "The moment to check for, in the study's time zone, such as 2026-03-05T14:20; now when not given.",
            HelpName = "TIME",
        };
        var all = new Option<bool>("--all")
        {
            Description = "List every tube that is due or overdue.",
        };
        var answered = new Option<bool>("--answered")
        {
            Description = "List also the queries that study.toml answers.",
        };
        var suggest = new Option<bool>("--suggest")
        {
            Description =
                "Show how files of your own systems could be read: the text for study.toml, how sure each line is, three rows as they would be read.",
        };
        var write = new Option<bool>("--write")
        {
            Description =
                "With --suggest: put the text into study.toml and keep a copy; what is not sure stays a comment.",
        };
        var json = StudyArgument.Json("Write inventory and queries as JSON.");
        var command = new Command(
            "check",
            "Show how far the collection is and what is due, then every data query: what was read where, what is wrong, what to do. Shows no change and concludes nothing; a query quotes only what it asks about.\n\nExamples:\n  stability-study check my-study\n  stability-study check my-study --suggest"
        )
        {
            study,
            asOf,
            all,
            answered,
            suggest,
            write,
            json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(write) && !result.GetValue(suggest))
            {
                result.AddError(
                    "--write puts a suggestion into study.toml: give --suggest with it."
                );
            }

            if (
                result.GetValue(suggest)
                && (result.GetValue(json) || result.GetValue(all) || result.GetValue(answered))
            )
            {
                result.AddError("--suggest stands alone, or with --write and --as-of.");
            }
        });
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                new Request(
                    parsed.GetRequiredValue(study),
                    parsed.GetValue(asOf),
                    parsed.GetValue(all),
                    parsed.GetValue(answered),
                    parsed.GetValue(json),
                    parsed.GetValue(suggest),
                    parsed.GetValue(write)
                )
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, Request request)
    {
        var files = StudyFolder.Read(request.Folder);
        var time = StudyTime.Of(files, request.AsOf, terminal.Clock);
        if (request.Suggests)
        {
            return SuggestRun.Run(terminal, request.Folder, files, time.AsOf, request.Writes);
        }

        var isLocked = IsLocked(files);
        var study = CheckedStudy.Of(files, time.AsOf);
        if (request.Json)
        {
            terminal.WriteJson(
                QueryDocument.WriteChecked(study.Inventory, study.Queries, study.Answered)
            );
        }
        else
        {
            Write(terminal, request, study, time, isLocked);
        }

        return study.IsStopped ? ExitCode.StopQueries : ExitCode.Done;
    }

    private static void Write(
        Terminal terminal,
        Request request,
        CheckedStudy study,
        StudyTime time,
        bool isLocked
    )
    {
        if (study is { Inventory: { } inventory, Inputs: { } inputs })
        {
            if (HasNoData(study))
            {
                terminal.Out.WriteLine(
                    isLocked
                        ? "No data yet. The protocol is locked: next, print the worksheets and collect the first specimen."
                        : "No data yet: next, plan and lock."
                );
            }
            else
            {
                new InventoryListing(terminal, inventory, inputs.Protocol, time, request.All).Write(
                    inputs.Facts.EndedEarly is not null
                );
            }

            terminal.Out.WriteLine();
        }

        WriteQueries(terminal, request, study);
        SayNext(terminal, request.Folder, study, isLocked);
    }

    private static void WriteQueries(Terminal terminal, Request request, CheckedStudy study)
    {
        var before =
            study.Answered.Length == 0
                ? ""
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $" ({study.Answered.Length} answered before{(request.Answered ? "" : ": --answered")})"
                );
        terminal.Out.WriteLine("Queries: " + QueryListing.Total(study.Queries) + before);
        if (study.AnswersWithoutQuery > 0)
        {
            terminal.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{study.AnswersWithoutQuery} of the answers in study.toml {(study.AnswersWithoutQuery == 1 ? "fits" : "fit")} no query any more."
                )
            );
        }

        if (!study.Queries.IsEmpty)
        {
            terminal.Out.WriteLine();
            QueryListing.WriteEach(terminal, study.Queries, _ => null);
        }

        if (request.Answered && !study.Answered.IsEmpty)
        {
            terminal.Out.WriteLine("Answered before:");
            terminal.Out.WriteLine();
            var answers = study.Inputs?.Facts.Answers ?? [];
            QueryListing.WriteEach(
                terminal,
                study.Answered,
                query =>
                    answers.FirstOrDefault(answer => answer.Query == QueryReference.Of(query))
                        is { } answer
                        ? FormattableString.Invariant(
                            $"answered by {answer.By} on {answer.On:yyyy-MM-dd}: {answer.Text}"
                        )
                        : null
            );
        }
    }

    private static void SayNext(Terminal terminal, string folder, CheckedStudy study, bool isLocked)
    {
        if (study.IsEnded)
        {
            return;
        }

        if (study.IsStopped)
        {
            terminal.Error.WriteLine("next: answer what is marked STOP, and run check again");
        }
        else if (HasNoData(study))
        {
            NextCommand.Say(terminal, isLocked ? "worksheet" : "plan", folder);
        }
        else if (study.Inventory is { IsEmpty: false, IsCollecting: false })
        {
            NextCommand.Say(terminal, "report", folder);
        }
    }

    private static bool HasNoData(CheckedStudy study) =>
        study.Inputs is { Tubes.IsEmpty: true, Results.IsEmpty: true, Controls.IsEmpty: true }
        && !study.IsStopped;

    private static bool IsLocked(StudyBytes files) =>
        files.Files.ContainsKey(Files.Locking.LockFile.Name);

    private sealed record Request(
        string Folder,
        string? AsOf,
        bool All,
        bool Answered,
        bool Json,
        bool Suggests,
        bool Writes
    );
}
