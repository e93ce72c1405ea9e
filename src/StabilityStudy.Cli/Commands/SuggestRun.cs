using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;

namespace StabilityStudy.Cli.Commands;

/// <summary>check --suggest: how delivered files could be read, and with --write the same put into study.toml.</summary>
internal static class SuggestRun
{
    /// <summary>Suggests.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="folder">The study folder.</param>
    /// <param name="files">Its files.</param>
    /// <param name="asOf">The moment of the check.</param>
    /// <param name="writes">Whether study.toml is changed.</param>
    public static ExitCode Run(
        Terminal terminal,
        string folder,
        StudyBytes files,
        DateTimeOffset asOf,
        bool writes
    )
    {
        var outcome = StudySuggestion.Of(files, asOf);
        if (!outcome.TryGet(out var suggestion))
        {
            terminal.Out.WriteLine(
                "Nothing can be suggested before protocol.toml and study.toml can be read."
            );
            terminal.Out.WriteLine();
            QueryListing.Write(terminal, outcome.Queries);
            return ExitCode.StopQueries;
        }

        SuggestionListing.Write(terminal, suggestion);
        if (!suggestion.Tables.IsEmpty)
        {
            if (writes)
            {
                Write(terminal, folder, files, suggestion);
            }
            else
            {
                terminal.Error.WriteLine(
                    "Nothing was changed. --write puts it into study.toml and keeps a copy."
                );
            }
        }

        return suggestion.Questions.IsEmpty ? ExitCode.Done : ExitCode.StopQueries;
    }

    private static void Write(
        Terminal terminal,
        string folder,
        StudyBytes files,
        StudySuggestion suggestion
    )
    {
        var facts = files.Files[StudyBytes.FactsName];
        if (suggestion.WrittenInto(facts) is not { } written)
        {
            throw new UsageException(
                "study.toml describes its files in braces, or over several lines, so that nothing can be put in their place. Nothing was changed: paste the text by hand."
            );
        }

        var copy = FreeName(folder);
        AtomicFile.Write(
            (Path.Combine(folder, copy), facts),
            (Path.Combine(folder, StudyBytes.FactsName), written)
        );
        terminal.Error.WriteLine($"study.toml was changed; the one before is {copy}.");
        NextCommand.Say(terminal, "check", folder);
    }

    // The ending keeps the copy from being read as a part of the study.
    private static string FreeName(string folder)
    {
        for (var number = 1; ; number++)
        {
            var name = string.Create(
                CultureInfo.InvariantCulture,
                $"{StudyBytes.FactsName}.before-{number}"
            );
            if (!File.Exists(Path.Combine(folder, name)))
            {
                return name;
            }
        }
    }
}
