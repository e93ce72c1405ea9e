namespace StabilityStudy.Core.Study;

/// <summary>How a file of the laboratory was read where study.toml says that it is not written in the usual way.</summary>
/// <param name="Name">Its name.</param>
/// <param name="DateFormat">How its times are written; null for the usual way.</param>
/// <param name="HasDecimalComma">Whether its numbers have a decimal comma.</param>
/// <param name="Headers">Columns that have another header there.</param>
/// <param name="Words">Words that stand for others there.</param>
/// <param name="Codes">Columns of study codes whose entries were replaced. The entries may be names of persons and are not repeated.</param>
/// <param name="Constants">What holds for every row and is not in the file.</param>
public sealed record OwnFile(
    string Name,
    string? DateFormat,
    bool HasDecimalComma,
    ImmutableArray<ReadHeader> Headers,
    ImmutableArray<ReadWord> Words,
    ImmutableArray<ReplacedCodes> Codes,
    ImmutableArray<StatedConstant> Constants
)
{
    /// <summary>Further settings that say how its lines were taken.</summary>
    public ImmutableArray<ReadSetting> Settings { get; init; } = [];
}

/// <summary>A setting of study.toml that says how the lines of a file were taken.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">Its value.</param>
public sealed record ReadSetting(string Key, string Value);

/// <summary>A column under the laboratory's own header.</summary>
/// <param name="Column">Our name of the column.</param>
/// <param name="Header">The header in the file.</param>
public sealed record ReadHeader(string Column, string Header);

/// <summary>A word of the laboratory and what it was read as.</summary>
/// <param name="Column">Our name of the column.</param>
/// <param name="Written">The word in the file; empty for an empty field.</param>
/// <param name="ReadAs">The word in its place.</param>
public sealed record ReadWord(string Column, string Written, string ReadAs)
{
    /// <summary>What stands behind a unit into which results were converted.</summary>
    public const string Converted = " (results converted)";
}

/// <summary>A column of study codes in which entries of the file were replaced.</summary>
/// <param name="Column">Our name of the column.</param>
/// <param name="Count">How many different entries.</param>
public sealed record ReplacedCodes(string Column, int Count);

/// <summary>A value that every row has and that is not in the file.</summary>
/// <param name="Column">Our name of the column.</param>
/// <param name="Value">The value.</param>
public sealed record StatedConstant(string Column, string Value);
