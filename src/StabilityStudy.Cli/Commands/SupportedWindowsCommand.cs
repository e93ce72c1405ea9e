using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Cli.Commands;

/// <summary>supported-windows: what is in force by the signed reports of a folder, and whether a specimen may still be tested.</summary>
internal static class SupportedWindowsCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = RegisterArgument.Create("verified");
        var asOf = new Option<string?>("--as-of")
        {
            Description = "The day to answer for, YYYY-MM-DD; today when not given.",
            HelpName = "DAY",
        };
        var all = new Option<bool>("--all") { Description = "List also what is not in force." };
        var trust = new TrustOptions();
        var analyte = Text("--analyte", "May it be tested? Code of the analyte.", "CODE");
        var group = Text("--group", "Code of the patient group; unknown when not given.", "CODE");
        var storage = Text(
            "--storage",
            "Code of the storage; when not given, the strictest of all storages answers.",
            "CODE"
        );
        var waited = Text(
            "--waited",
            "Time since collection: \"5 h 10 min\", 5:10 or \"310 min\". Without it the answer is not to test.",
            "TIME"
        );
        var collected = Text(
            "--collected",
            "In place of --waited: when it was collected, by this computer's clock: 22:10, the last time that it was so, or \"2026-05-04 22:10\".",
            "TIME"
        );
        var instrument = Text(
            "--instrument",
            "Code of the instrument. Without --analyte the list says which study is due before it is used.",
            "CODE"
        );
        var lot = Text("--lot", "The same for a reagent lot.", "CODE");
        var csv = new Option<string?>("--csv")
        {
            Description = "Also write every window, in force or not, as a row of a CSV file.",
            HelpName = "FILE",
        };
        var noCache = new Option<bool>("--no-cache")
        {
            Description =
                "Verify every file anew, also those that were verified today by this program and trust; an answer whether to test always does so with what it follows from.",
        };
        var spun = Text("--spun", "How old it was when it was spun.", "TIME");
        var separated = Text(
            "--separated",
            "How old it was when the plasma was taken off the cells; not at all when not given.",
            "TIME"
        );
        var unfit = Text("--unfit", "What is wrong with the tube, such as clotted.", "REASON");
        var strict = new Option<bool>("--strict")
        {
            Description =
                "Instrument, lot and spin that are not given count as not covered, as in a computer system.",
        };
        var json = StudyArgument.Json("Write the answer as JSON.");
        var command = new Command(
            "supported-windows",
            "Show the windows that signed reports put into force, or whether a specimen may still be tested: exit code 0 for test, 3 for do not test, 5 for ask the director.\n\nExamples:\n  stability-study supported-windows register --trust keys\n  stability-study supported-windows register --trust keys --analyte aPTT --group none --waited \"5 h\""
        )
        {
            folder,
            asOf,
            all,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            analyte,
            group,
            storage,
            waited,
            collected,
            instrument,
            lot,
            csv,
            noCache,
            spun,
            separated,
            unfit,
            strict,
            json,
        };
        command.SetAction(parsed =>
        {
            var day = DayText.OrToday(
                parsed.GetValue(asOf),
                asOf.Name,
                terminal.Clock.GetLocalNow()
            );
            var code = TextOption.OneLine(parsed.GetValue(analyte), analyte.Name);
            Option<string?>[] facts = [group, storage, waited, collected, spun, separated, unfit];
            if (
                code is null
                && facts.FirstOrDefault(fact => parsed.GetValue(fact) is not null) is { } alone
            )
            {
                throw new UsageException($"{alone.Name} goes with --analyte.");
            }

            var table = parsed.GetValue(csv);
            if (code is not null && table is not null)
            {
                throw new UsageException("--csv does not go with --analyte.");
            }

            if (
                parsed.GetValue(collected) is not null
                && (parsed.GetValue(waited) ?? parsed.GetValue(asOf)) is not null
            )
            {
                throw new UsageException(
                    $"{collected.Name} says how old it is now, and does not go with {waited.Name} or {asOf.Name}."
                );
            }

            var question = code is null
                ? null
                : new BenchQuestion(code, day)
                {
                    Group = TextOption.OneLine(parsed.GetValue(group), group.Name),
                    Storage = TextOption.OneLine(parsed.GetValue(storage), storage.Name),
                    Waited = parsed.GetValue(collected) is { } clock
                        ? CollectedOption.Ago(clock, collected.Name, terminal.Clock)
                        : WaitedOption.Read(parsed.GetValue(waited), waited.Name),
                    Spun = WaitedOption.Read(parsed.GetValue(spun), spun.Name),
                    Separated = WaitedOption.Read(parsed.GetValue(separated), separated.Name),
                    Unfit = TextOption.OneLine(parsed.GetValue(unfit), unfit.Name),
                    CountsOpenAsNotTrue = parsed.GetValue(strict),
                    Instrument = TextOption.OneLine(parsed.GetValue(instrument), instrument.Name),
                    Lot = TextOption.OneLine(parsed.GetValue(lot), lot.Name),
                };
            var trusted = trust.Of(parsed);
            var now = terminal.Clock.GetUtcNow();
            var register = RegisterFolder.Read(
                parsed.GetRequiredValue(folder),
                trusted.Read(now),
                terminal,
                parsed.GetValue(noCache)
                    ? null
                    : VerificationCache.Open(terminal.CacheFolder, trusted.Digest(), now),
                entry => question is null || !MayAnswer(entry, question.Analyte)
            );
            if (table is not null)
            {
                AtomicFile.Write((table, RegisterCsv.Write(register, day)));
            }

            return (int)(
                question is null
                    ? List(
                        terminal,
                        register,
                        new RegisterListing(
                            terminal,
                            register,
                            day,
                            TextOption.OneLine(parsed.GetValue(instrument), instrument.Name),
                            TextOption.OneLine(parsed.GetValue(lot), lot.Name)
                        ),
                        parsed.GetValue(all),
                        parsed.GetValue(json)
                    )
                    : Answer(terminal, register, question, parsed.GetValue(json))
            );
        });
        return command;
    }

    /// <summary>Whether an answer can follow from a file: notices, reports about the analyte, and what may be about any.</summary>
    private static bool MayAnswer(RegisterEntry entry, string analyte) =>
        entry.Report is not { } report
            ? entry.Study is null
            : SpelledQuestion.MayMean(report, analyte);

    private static ExitCode List(
        Terminal terminal,
        WindowRegister register,
        RegisterListing listing,
        bool all,
        bool json
    )
    {
        if (json)
        {
            RegisterJson.Write(terminal, register, listing.Day);
        }
        else
        {
            listing.Write(all);
        }

        return listing.Attention.IsEmpty ? ExitCode.Done : ExitCode.VerificationIncomplete;
    }

    private static ExitCode Answer(
        Terminal terminal,
        WindowRegister register,
        BenchQuestion question,
        bool json
    )
    {
        if (register.Reports.IsEmpty)
        {
            terminal.Error.WriteLine(
                "There is no signed report in the folder. Put the signed reports of your studies into it (PDF files)."
            );
        }

        var answer = MayTest.Answer(register, SpelledQuestion.In(register, question));
        if (json)
        {
            RegisterJson.Write(terminal, answer);
        }
        else
        {
            Say(terminal, AnswerWords.Sentence(answer));
            if (ReportedComment.Of(answer) is { } comment)
            {
                Say(terminal, $"report: \"{comment}\"");
            }
        }

        return answer.Verdict switch
        {
            BenchVerdict.DoNotTest => ExitCode.NotSupported,
            BenchVerdict.AskDirector => ExitCode.VerificationIncomplete,
            BenchVerdict.Test => ExitCode.Done,
        };
    }

    /// <summary>At a terminal wrapped; in a pipe a sentence stays one line.</summary>
    private static void Say(Terminal terminal, string sentence)
    {
        if (terminal.IsScreen)
        {
            WrappedText.Write(terminal, sentence);
        }
        else
        {
            terminal.Out.WriteLine(sentence);
        }
    }

    private static Option<string?> Text(string name, string description, string help) =>
        new(name) { Description = description, HelpName = help };
}
