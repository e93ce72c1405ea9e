using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Looks;

namespace StabilityStudy.Files.Recording;

/// <summary>One line of the record: what was done, by whom, when, over which bytes.</summary>
/// <param name="Action">What was done, one of <see cref="RecordAction"/>.</param>
/// <param name="At">When, with the offset of this computer's clock.</param>
/// <param name="By">Who did it, as given or as the computer knows the user.</param>
/// <param name="Tool">Program and version.</param>
/// <param name="Inputs">What it was made from.</param>
/// <param name="Outputs">What was made.</param>
public sealed record RecordEntry(
    string Action,
    DateTimeOffset At,
    string By,
    string Tool,
    ImmutableArray<FileHash> Inputs,
    ImmutableArray<FileHash> Outputs
)
{
    /// <summary>Fingerprint of the data that were shown.</summary>
    public string DataSha256 { get; init; } = "";

    /// <summary>The decision that was signed, in words; empty without one.</summary>
    public string Decision { get; init; } = "";

    /// <summary>Seed of the random run order that was printed; null where none was.</summary>
    public int? Seed { get; init; }

    /// <summary>What was shown of each time point; empty when nothing was, or nothing new.</summary>
    public ImmutableArray<LookedAtCell> Look { get; init; } = [];
}

/// <summary>Words for what was done.</summary>
public static class RecordAction
{
    /// <summary>The protocol was locked.</summary>
    public const string Lock = "lock";

    /// <summary>Figures and conclusions were shown.</summary>
    public const string Analyze = "analyze";

    /// <summary>A report was written.</summary>
    public const string Report = "report";

    /// <summary>A report was signed.</summary>
    public const string Sign = "sign";

    /// <summary>A signed protocol document was put beside the lock of its protocol.</summary>
    public const string Approve = "approve";

    /// <summary>Pages for the bench with a random run order were printed.</summary>
    public const string Worksheet = "worksheet";

    /// <summary>A notice was made: about a signed report, or to end the study.</summary>
    public const string Notice = "notice";

    /// <summary>What proves the signatures of a report was added to it.</summary>
    public const string Renew = "renew";
}
