using System.CommandLine;

namespace StabilityStudy.Cli.Commands;

/// <summary>The folder of signed reports that several commands read.</summary>
internal static class RegisterArgument
{
    /// <param name="done">What is done with each report.</param>
    public static Argument<string> Create(string done) =>
        new("FOLDER")
        {
            Description =
                $"The folder with the signed reports of the facility, in it and in folders inside it. Each is {done}.",
        };
}
