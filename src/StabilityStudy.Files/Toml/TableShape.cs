using System.Collections.Immutable;

namespace StabilityStudy.Files.Toml;

/// <summary>The keys that a table may have.</summary>
/// <param name="Name">Name of the table in messages: "analyte"; empty for the top of the file.</param>
/// <param name="Keys">Every known key.</param>
internal sealed record TableShape(string Name, params ImmutableArray<string> Keys)
{
    /// <summary>Whether any key is allowed, because the keys are codes given elsewhere.</summary>
    public bool HasFreeKeys => Keys.IsEmpty;
}
