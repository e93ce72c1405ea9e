namespace StabilityStudy.Cli.Help;

/// <summary>What the exit codes say, as the manual tells it.</summary>
internal static class ExitCodes
{
    public static IEnumerable<CommandPart> All =>
        Enum.GetValues<ExitCode>()
            .Select(code => new CommandPart(
                ((int)code).ToString(CultureInfo.InvariantCulture),
                Meaning(code)
            ));

    private static string Meaning(ExitCode code) =>
        code switch
        {
            ExitCode.Done => "Done.",
            ExitCode.StopQueries => "Data queries stop the study.",
            ExitCode.WrongUsage =>
                "Wrong usage: an unknown option, a folder that does not exist, a file that cannot be written.",
            ExitCode.NotSupported =>
                "A window is not supported (only with --require-supported), or a specimen is not to be tested.",
            ExitCode.VerificationFailed => "Verification failed, or a figure of prove differs.",
            ExitCode.VerificationIncomplete =>
                "Nothing wrong was found, but not everything could be checked; or the director is to be asked.",
            ExitCode.InternalError => "An error inside the program.",
            ExitCode.Cancelled => "Cancelled.",
            _ => throw new ArgumentOutOfRangeException(nameof(code)),
        };
}
