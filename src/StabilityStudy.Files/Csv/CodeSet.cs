using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>Codes that a row may refer to.</summary>
internal sealed class CodeSet
{
    private readonly FrozenSet<string>? _codes;

    /// <summary>Makes a set.</summary>
    /// <param name="what">What the codes stand for: "group".</param>
    /// <param name="where">The file that lists them.</param>
    /// <param name="codes">The codes; null when they could not be read, and then every code passes.</param>
    public CodeSet(string what, string where, ImmutableArray<string>? codes)
    {
        What = what;
        Where = where;
        _codes = codes?.ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>What the codes stand for.</summary>
    public string What { get; }

    /// <summary>The file that lists them.</summary>
    public string Where { get; }

    /// <summary>Whether a code may be used.</summary>
    public bool Holds(string code) => _codes is null || _codes.Contains(code);

    /// <summary>" Did you mean "x"?", or nothing.</summary>
    public string Question(string code) =>
        NearestWord.Question(code, (_codes ?? []).Order(StringComparer.Ordinal));
}
