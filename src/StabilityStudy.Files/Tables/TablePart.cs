using System.Collections.Frozen;

namespace StabilityStudy.Files.Tables;

/// <summary>One of several results that stand in each row: the columns and constants that are its own.</summary>
/// <param name="Columns">Our column → the facility's headers, of which the texts are joined by a space.</param>
/// <param name="Constants">Our column → the value that it has in this part.</param>
internal sealed record TablePart(
    FrozenDictionary<string, ImmutableArray<string>> Columns,
    FrozenDictionary<string, string> Constants
)
{
    /// <summary>A part without anything of its own.</summary>
    public static readonly TablePart Whole = new(
        FrozenDictionary<string, ImmutableArray<string>>.Empty,
        FrozenDictionary<string, string>.Empty
    );
}
