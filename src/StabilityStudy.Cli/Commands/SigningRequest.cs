using StabilityStudy.Cli.Console;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>What the arguments of sign ask for: to sign with a key, or to prepare the signature of one that is elsewhere.</summary>
internal sealed record SigningRequest(
    string Report,
    string Role,
    string? Certificate,
    string? Name,
    string? Credentials,
    DecisionRequest? Decision,
    bool AcceptsNotRecomputed
);

/// <summary>The key to sign with, and where the signed file goes.</summary>
internal sealed record SigningWithKey(
    string Key,
    string? Passphrase,
    string? TimeStamp,
    string? Output
);

/// <summary>The signature that was made elsewhere, and where the signed file goes.</summary>
internal sealed record CompletionRequest(
    string Prepared,
    string Answer,
    string? TimeStamp,
    string? Output
);
