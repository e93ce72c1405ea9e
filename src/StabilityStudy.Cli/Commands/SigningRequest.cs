using StabilityStudy.Cli.Console;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>What the arguments of sign ask for.</summary>
internal sealed record SigningRequest(
    string Report,
    string Role,
    string Key,
    string? Certificate,
    string? Passphrase,
    string? Name,
    string? Credentials,
    ApproverDecision? Decision,
    string? TimeStamp,
    bool AcceptsNotRecomputed,
    string? Output
)
{
    public const string Approve = "approve";
    public const string Conditions = "conditions";
    public const string Decline = "decline";

    public static ApproverDecision? DecisionOf(string? decision, string? text) =>
        (decision, text) switch
        {
            (null, null) => null,
            (null, _) => throw new UsageException("--text goes with --decision."),
            (Approve, _) => new ApproverDecision(DecisionKind.Approve, text),
            (Conditions, _) => new ApproverDecision(DecisionKind.Conditions, text),
            _ => new ApproverDecision(DecisionKind.Decline, text),
        };
}
