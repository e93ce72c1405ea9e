using System.CommandLine;
using System.Security.Cryptography;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Queries;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>transcription: rows drawn at random, to be compared with the instrument's printout.</summary>
internal static class TranscriptionCommand
{
    private const int UsualRows = 20;
    private const int MostRows = 100_000;
    private const int MostSeeds = 1_000_000_000;

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var rows = new Option<int>("--rows")
        {
            Description = "How many rows to draw.",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => UsualRows,
        };
        var seed = new Option<int?>("--seed")
        {
            Description = "Draws the rows of an earlier sheet again; a new seed when not given.",
            HelpName = "NUMBER",
        };
        var asOf = new Option<string?>("--as-of")
        {
            Description =
                "Only rows tested up to this time, in the study's time zone, such as 2026-03-05T14:20; now when not given.",
            HelpName = "TIME",
        };
        var csv = new Option<bool>("--csv")
        {
            Description = "Write the rows as CSV, for a spreadsheet.",
        };
        var command = new Command(
            "transcription",
            "Print a sheet of rows drawn at random, to be compared with the instrument's printout; the comparison is stated in study.toml and in the report. Shows no change.\n\nExample:\n  stability-study transcription my-study > sheet.txt"
        )
        {
            study,
            rows,
            seed,
            asOf,
            csv,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                new Request(
                    parsed.GetRequiredValue(study),
                    parsed.GetValue(rows),
                    parsed.GetValue(seed),
                    parsed.GetValue(asOf),
                    parsed.GetValue(csv)
                )
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, Request request)
    {
        if (request.Rows is < 1 or > MostRows)
        {
            throw new UsageException($"--rows: draw 1 to {MostRows} rows.");
        }

        if (request.Seed is < 0 or > MostSeeds)
        {
            throw new UsageException($"--seed: a seed is a number from 0 to {MostSeeds}.");
        }

        var files = StudyFolder.Read(request.Folder);
        var time = StudyTime.Of(files, request.AsOf, terminal.Clock);
        var study = CheckedStudy.Of(files, time.AsOf);
        if (study.IsStopped || study.Inputs is not { } inputs)
        {
            QueryListing.Write(
                terminal,
                [.. study.Queries.Where(query => query.Severity == Severity.Stop)]
            );
            terminal.Error.WriteLine("No sheet: answer the queries marked STOP first.");
            return ExitCode.StopQueries;
        }

        var seed = request.Seed ?? RandomNumberGenerator.GetInt32(1, MostSeeds);
        var sheet = new TranscriptionSheet(
            inputs.Facts.Files.Results,
            inputs.Results.Count(row => row.TestedAt <= time.AsOf),
            seed,
            TranscriptionSample.Draw(inputs.Results, seed, request.Rows, time.AsOf)
        );
        if (sheet.Rows.IsEmpty)
        {
            throw new UsageException(
                $"There is no result up to {time.Whole(time.AsOf)} that could be compared."
            );
        }

        if (request.Csv)
        {
            terminal.Out.Write(sheet.ToCsv());
        }
        else
        {
            sheet.Write(terminal, time);
        }

        terminal.Error.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"To print the same rows again: --rows {request.Rows} --seed {seed} --as-of {time.AsOf:yyyy-MM-dd'T'HH:mmzzz}"
            )
        );
        return ExitCode.Done;
    }

    private sealed record Request(string Folder, int Rows, int? Seed, string? AsOf, bool Csv);
}
