using System.Collections.Immutable;
using System.Text.RegularExpressions;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>A query code that the source of the analysis writes out.</summary>
/// <param name="Code">The code, whole.</param>
/// <param name="Severity">The severity where it follows the code; else empty.</param>
internal sealed partial record RaisedCode(string Code, string Severity)
{
    public bool IsOf(QueryKind kind) =>
        kind.Code == Code && (Severity.Length == 0 || Severity == kind.Severity.ToString());
}

/// <summary>Looks for query codes in the source.</summary>
internal static partial class RaisedCodes
{
    private static readonly string[] Folders = ["Analysis", "Pairing", "Controls", "Locking"];

    /// <summary>Source that puts a code together from parts, so that no list could be held against it.</summary>
    public static ImmutableArray<string> PutTogether() =>
        [.. Sources().SelectMany(text => Ending().Matches(text)).Select(match => match.Value)];

    public static ImmutableArray<RaisedCode> Find() =>
        [
            .. Sources()
                .SelectMany(text => Call().Matches(text))
                .Select(match => new RaisedCode(
                    match.Groups["code"].Value,
                    match.Groups["severity"].Value
                ))
                .Distinct(),
        ];

    private static IEnumerable<string> Sources() =>
        Folders
            .Select(folder =>
                Path.Combine(RepositoryFile.Root, "src", "StabilityStudy.Core", folder)
            )
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories))
            .Select(File.ReadAllText);

    [GeneratedRegex(
        """\+\s*"-[a-z]|\}-[a-z]+(-[a-z]+)*",""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Ending();

    // The code is the first argument: words with hyphens or, before a severity, also one word.
    [GeneratedRegex(
        """\(\s*"((?<code>[a-z]+(-[a-z]+)+)",(\s*Severity\.(?<severity>\w+))?|(?<code>[a-z]+)",\s*Severity\.(?<severity>\w+))""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Call();
}
