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
    DecisionRequest? Decision,
    string? TimeStamp,
    bool AcceptsNotRecomputed,
    string? Output
);
