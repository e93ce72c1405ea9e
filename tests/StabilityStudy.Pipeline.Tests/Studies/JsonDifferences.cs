using System.Text.Json;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>Compares two documents of the same shape.</summary>
internal static class JsonDifferences
{
    /// <summary>The paths at which two documents differ.</summary>
    /// <param name="left">A document.</param>
    /// <param name="right">The other.</param>
    /// <param name="tolerance">How far numbers may differ, relative to the first.</param>
    /// <param name="ignored">Names of properties that are not compared.</param>
    public static IEnumerable<string> Of(
        ReadOnlyMemory<byte> left,
        ReadOnlyMemory<byte> right,
        double tolerance,
        params string[] ignored
    )
    {
        using var a = JsonDocument.Parse(left);
        using var b = JsonDocument.Parse(right);
        return [.. Of(a.RootElement, b.RootElement, "", tolerance, ignored)];
    }

    private static IEnumerable<string> Of(
        JsonElement a,
        JsonElement b,
        string path,
        double tolerance,
        string[] ignored
    )
    {
        if (a.ValueKind != b.ValueKind)
        {
            return [path];
        }

        return a.ValueKind switch
        {
            JsonValueKind.Object => a.EnumerateObject()
                .Select(property => property.Name)
                .Union(b.EnumerateObject().Select(property => property.Name))
                .Where(name => !ignored.Contains(name, StringComparer.Ordinal))
                .SelectMany(name =>
                    a.TryGetProperty(name, out var inA) && b.TryGetProperty(name, out var inB)
                        ? Of(inA, inB, $"{path}/{name}", tolerance, ignored)
                        : [$"{path}/{name}"]
                ),
            JsonValueKind.Array when a.GetArrayLength() == b.GetArrayLength() => a.EnumerateArray()
                .Zip(b.EnumerateArray())
                .SelectMany(
                    (pair, i) => Of(pair.First, pair.Second, $"{path}/{i}", tolerance, ignored)
                ),
            JsonValueKind.Number => Math.Abs(a.GetDouble() - b.GetDouble())
            <= tolerance * Math.Abs(a.GetDouble())
                ? []
                : [path],
            _ => a.GetRawText() == b.GetRawText() ? [] : [path],
        };
    }
}
