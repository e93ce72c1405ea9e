using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The answer of the bench in two or three words, the same wherever it stands.</summary>
internal static class VerdictWords
{
    /// <summary>"test", "do not test" or "ask the director".</summary>
    public static string Of(BenchVerdict verdict) =>
        verdict switch
        {
            BenchVerdict.DoNotTest => "do not test",
            BenchVerdict.AskDirector => "ask the director",
            BenchVerdict.Test => "test",
        };
}
