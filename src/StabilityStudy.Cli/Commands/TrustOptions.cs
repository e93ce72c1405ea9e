using System.CommandLine;
using StabilityStudy.Cli.Folders;

namespace StabilityStudy.Cli.Commands;

/// <summary>The options that say whom to trust.</summary>
internal sealed class TrustOptions
{
    public Option<string[]> Trust { get; } =
        new("--trust")
        {
            Description =
                "Certificates that you trust to vouch for signers: a PEM or DER file, or a folder of them, in which lists of revoked certificates may lie too. May be given more than once.",
            HelpName = "FILE",
        };

    public Option<string[]> TrustTime { get; } =
        new("--trust-time")
        {
            Description =
                "The same for time-stamp authorities: who vouches for signers does not vouch for the time.",
            HelpName = "FILE",
        };

    public Option<string[]> Revoked { get; } =
        new("--revoked")
        {
            Description =
                "Lists of revoked certificates (CRL) in PEM or DER, or answers about single ones (OCSP) in DER: a file, or a folder of them.",
            HelpName = "FILE",
        };

    public TrustInput Of(ParseResult parsed) =>
        new(
            parsed.GetValue(Trust) ?? [],
            parsed.GetValue(TrustTime) ?? [],
            parsed.GetValue(Revoked) ?? []
        );
}
