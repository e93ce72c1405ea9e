using System.CommandLine;

namespace StabilityStudy.Cli.Help;

/// <summary>A stretch of the way of a study, and the commands that belong to it.</summary>
/// <param name="Title">What is done there.</param>
/// <param name="Commands">In the order in which they are used.</param>
/// <param name="Shown">Number of the command whose first example stands for the group.</param>
internal sealed record CommandGroup(string Title, ImmutableArray<Command> Commands, int Shown = 0)
{
    /// <summary>A command to try.</summary>
    public string Example => CommandText.Of(Commands[Shown]).Examples[0].Lines[0];
}
