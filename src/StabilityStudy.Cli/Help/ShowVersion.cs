using System.CommandLine;
using System.CommandLine.Invocation;
using System.Reflection;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Help;

/// <summary>--version: the version, the rules by which it concludes, and the commit it was built from.</summary>
internal sealed class ShowVersion(Terminal terminal) : SynchronousCommandLineAction
{
    private const string NoCommit = "unknown";

    public override bool ClearsParseErrors => true;

    /// <summary>The commit of the sources, or "unknown" where they were built outside a repository.</summary>
    public static string Commit { get; } =
        typeof(ShowVersion)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .FirstOrDefault(item => item.Key == nameof(Commit))
            ?.Value
            is { Length: > 0 } commit
            ? commit
            : NoCommit;

    /// <summary>The line that --version writes.</summary>
    public static string Line =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{CommandTree.Program} {ToolVersion.Current}, decision rules {DecisionRules.Number}, commit {Commit}"
        );

    public override int Invoke(ParseResult parseResult)
    {
        terminal.Out.WriteLine(Line);
        return (int)ExitCode.Done;
    }
}
