using System.CommandLine;

namespace StabilityStudy.Cli.Commands;

/// <summary>Arguments and options that several commands share.</summary>
internal static class StudyArgument
{
    public static Argument<string> Create() =>
        new("STUDY")
        {
            Description = "Study folder: protocol.toml, study.toml, specimens.csv, results.csv.",
        };

    public static Option<bool> Json(string description) =>
        new("--json") { Description = description };

    public static Option<bool> RequireSupported() =>
        new("--require-supported")
        {
            Description = "Exit with code 3 when a patient group has no supported window.",
        };
}
