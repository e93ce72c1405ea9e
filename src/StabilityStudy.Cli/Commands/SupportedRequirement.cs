using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>Turns a missing window into an exit code, when the user asked for that.</summary>
internal static class SupportedRequirement
{
    public static ExitCode Check(AnalyzedStudy study, bool isRequired) =>
        isRequired && study.Analysis.Sequences.Any(sequence => sequence.Window is null)
            ? ExitCode.NotSupported
            : ExitCode.Done;
}
