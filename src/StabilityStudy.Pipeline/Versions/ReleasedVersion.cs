using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Pipeline.Versions;

/// <summary>A version of the program that made reports.</summary>
/// <param name="Version">Its version, for example "0.2.0".</param>
/// <param name="Format">Number of the form of its analysis.json.</param>
/// <param name="Rules">Number of the rules by which it concludes.</param>
/// <param name="QueryCodes">Codes of the data queries that it can raise.</param>
internal sealed record ReleasedVersion(
    string Version,
    int Format,
    int Rules,
    ImmutableHashSet<string> QueryCodes
)
{
    private const string Folder = "releases/";
    private const string Property = "property ";

    /// <summary>
    /// What its analysis.json states, as <see cref="AnalysisJson.Properties"/> names it: a report of it that lacks any was changed. That of this version, found at the first question, where
    /// no other is given.
    /// </summary>
    public ImmutableHashSet<string> Properties
    {
        get => field ??= AnalysisJson.Properties();
        init;
    }

    /// <summary>This version.</summary>
    public static ReleasedVersion Current { get; } =
        new(
            ToolVersion.Current,
            AnalysisJson.Format,
            DecisionRules.Number,
            [.. QueryCatalog.All.Select(kind => kind.Code)]
        );

    /// <summary>Finds this version or one that was released before.</summary>
    public static bool TryFind(string version, [NotNullWhen(true)] out ReleasedVersion? released)
    {
        released = version == Current.Version ? Current : Read(version);
        return released is not null;
    }

    /// <summary>What the program keeps of itself at a release: its form, its rules, the codes of its data queries and the properties of its analysis.json, a line each.</summary>
    public string ToText() =>
        string.Create(CultureInfo.InvariantCulture, $"format {Format}\nrules {Rules}\n")
        + string.Concat(
            QueryCodes
                .Order(StringComparer.Ordinal)
                .Concat(Properties.Order(StringComparer.Ordinal).Select(name => Property + name))
                .Select(line => line + "\n")
        );

    /// <summary>Whether a version is a later one than this program; one that is no version is not.</summary>
    public static bool IsLater(string version) =>
        Number(version) is { } stated
        && Number(ToolVersion.Current) is { } own
        && (
            stated > own || (stated == own && IsRelease(version) && !IsRelease(ToolVersion.Current))
        );

    /// <summary>Whether it is a release: one in development has a hyphen and comes before it.</summary>
    private static bool IsRelease(string version) =>
        !version.Contains('-', StringComparison.Ordinal);

    private static System.Version? Number(string version) =>
        System.Version.TryParse(version.Split('-')[0], out var number) ? number : null;

    private static ReleasedVersion? Read(string version)
    {
        using var stream = typeof(ReleasedVersion).Assembly.GetManifestResourceStream(
            Folder + version
        );
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return new ReleasedVersion(
            version,
            Number(lines[0], "format "),
            Number(lines[1], "rules "),
            [.. lines.Skip(2).Where(line => !line.StartsWith(Property, StringComparison.Ordinal))]
        )
        {
            Properties =
            [
                .. lines
                    .Where(line => line.StartsWith(Property, StringComparison.Ordinal))
                    .Select(line => line[Property.Length..]),
            ],
        };
    }

    private static int Number(string line, string name) =>
        line.StartsWith(name, StringComparison.Ordinal)
            ? int.Parse(line[name.Length..], NumberStyles.None, CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"A released version states no {name.Trim()}.");
}
