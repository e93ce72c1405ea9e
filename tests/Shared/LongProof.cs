using System.Globalization;

namespace StabilityStudy.Tests.Shared;

/// <summary>How much a proof tries: a fixed part in the usual run of the tests, more of it when tests/long-proofs.sh asks by a variable.</summary>
internal static class LongProof
{
    public static int Setting(string variable, int otherwise) =>
        int.TryParse(
            Environment.GetEnvironmentVariable(variable),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var value
        )
            ? value
            : otherwise;
}
