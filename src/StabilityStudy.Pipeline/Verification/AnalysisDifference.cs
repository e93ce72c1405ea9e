using System.Globalization;
using System.Text.Json;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Compares two analyses: texts, counts and words must be the same, estimates may differ by rounding of the last digits.</summary>
internal static class AnalysisDifference
{
    /// <summary>Largest difference of an estimate, relative to its size: other processors round the last digits otherwise.</summary>
    private const double Tolerance = 1e-9;

    private static readonly string[] s_names = ["name", "specimen", "criterion", "code", "analyte"];

    /// <summary>Each place where they differ, in words.</summary>
    public static IEnumerable<string> Of(
        ReadOnlyMemory<byte> claimed,
        ReadOnlyMemory<byte> recomputed
    )
    {
        if (claimed.Span.SequenceEqual(recomputed.Span))
        {
            yield break;
        }

        using var first = JsonDocument.Parse(claimed);
        using var second = JsonDocument.Parse(recomputed);
        foreach (var difference in Of(first.RootElement, second.RootElement, "analysis"))
        {
            yield return difference;
        }
    }

    private static IEnumerable<string> Of(JsonElement claimed, JsonElement found, string path)
    {
        if (claimed.ValueKind != found.ValueKind)
        {
            return [Differs(path, claimed, found)];
        }

        return claimed.ValueKind switch
        {
            JsonValueKind.Object => OfObjects(claimed, found, path),
            JsonValueKind.Array => OfArrays(claimed, found, path),
            JsonValueKind.Number when IsNear(claimed, found) => [],
            JsonValueKind.Number
            or JsonValueKind.String when claimed.GetRawText() != found.GetRawText() =>
            [
                Differs(path, claimed, found),
            ],
            _ => [],
        };
    }

    private static IEnumerable<string> OfObjects(
        JsonElement claimed,
        JsonElement found,
        string path
    )
    {
        var other = found.EnumerateObject().ToDictionary(item => item.Name, item => item.Value);
        foreach (var property in claimed.EnumerateObject())
        {
            var place = path + "." + property.Name;
            if (!other.Remove(property.Name, out var value))
            {
                yield return $"{place} is in the report only.";
                continue;
            }

            foreach (var difference in Of(property.Value, value, place))
            {
                yield return difference;
            }
        }

        foreach (var name in other.Keys)
        {
            yield return $"{path}.{name} is missing in the report.";
        }
    }

    private static IEnumerable<string> OfArrays(JsonElement claimed, JsonElement found, string path)
    {
        if (claimed.GetArrayLength() != found.GetArrayLength())
        {
            yield return FormattableString.Invariant(
                $"{path} has {claimed.GetArrayLength()} entries in the report and {found.GetArrayLength()} when computed again."
            );
            yield break;
        }

        var i = 0;
        foreach (var (one, two) in claimed.EnumerateArray().Zip(found.EnumerateArray()))
        {
            foreach (var difference in Of(one, two, $"{path}[{NameOf(one, i)}]"))
            {
                yield return difference;
            }

            i++;
        }
    }

    /// <summary>What a reader knows an entry by: the name of a file, the code of a specimen or analyte; its place where it has none.</summary>
    private static string NameOf(JsonElement entry, int place)
    {
        if (entry.ValueKind == JsonValueKind.Object)
        {
            foreach (var key in s_names)
            {
                if (
                    entry.TryGetProperty(key, out var name)
                    && name.ValueKind == JsonValueKind.String
                )
                {
                    return name.GetString()!;
                }
            }
        }

        return (place + 1).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Counts are whole numbers and must be equal; written alike, they are.</summary>
    private static bool IsNear(JsonElement claimed, JsonElement found)
    {
        if (claimed.GetRawText() == found.GetRawText())
        {
            return true;
        }

        if (claimed.TryGetInt64(out _) && found.TryGetInt64(out _))
        {
            return false;
        }

        var (one, two) = (claimed.GetDouble(), found.GetDouble());
        return double.IsFinite(one)
            && double.IsFinite(two)
            && Math.Abs(one - two) <= Tolerance * Math.Max(Math.Abs(one), Math.Abs(two));
    }

    private static string Differs(string path, JsonElement claimed, JsonElement found) =>
        $"{path} is {Short(claimed)} in the report and {Short(found)} when computed again.";

    private static string Short(JsonElement value)
    {
        const int most = 60;
        var text = value.GetRawText();
        return text.Length <= most ? text : text[..most] + "…";
    }
}
