using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A list.</summary>
/// <param name="item">The form of its entries.</param>
/// <param name="key">Properties that tell entries apart; none where their place, or for texts in an open list their wording, does.</param>
/// <param name="isOpen">Whether another version may have further entries.</param>
internal sealed class ListForm<T>(Form<T> item, string[] key, bool isOpen) : Form<ImmutableArray<T>>
{
    public override void Write(Utf8JsonWriter json, ImmutableArray<T> value)
    {
        json.WriteStartArray();
        foreach (var entry in value)
        {
            item.Write(json, entry);
        }

        json.WriteEndArray();
    }

    public override JsonNode Schema(SchemaDefinitions definitions) =>
        new JsonObject { ["type"] = "array", ["items"] = item.Schema(definitions) };

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (stated.ValueKind != JsonValueKind.Array || computed.ValueKind != JsonValueKind.Array)
        {
            comparison.Differs(path, stated, computed);
            return;
        }

        var others = Named(stated);
        foreach (var (name, entry) in Named(computed))
        {
            var place = $"{path}[{name}]";
            if (others.Remove(name, out var other))
            {
                item.Compare(other, entry, place, comparison);
            }
            else if (isOpen)
            {
                comparison.MissingInReport(place, isDecisive: false);
            }
            else
            {
                comparison.Differs($"{place} is missing in the report.");
            }
        }

        foreach (var name in others.Keys)
        {
            if (isOpen)
            {
                comparison.InReportOnly($"{path}[{name}]");
            }
            else
            {
                comparison.Differs($"{path}[{name}] is in the report only.");
            }
        }
    }

    /// <summary>The entries by what tells them apart; a second one of the same name has its number beside it.</summary>
    private OrderedDictionary<string, JsonElement> Named(JsonElement list)
    {
        var named = new OrderedDictionary<string, JsonElement>(StringComparer.Ordinal);
        var place = 0;
        foreach (var entry in list.EnumerateArray())
        {
            place++;
            var name = NameOf(entry, place);
            for (var again = 2; !named.TryAdd(name, entry); again++)
            {
                name = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{NameOf(entry, place)} ({again})"
                );
            }
        }

        return named;
    }

    private string NameOf(JsonElement entry, int place)
    {
        if (key.Length == 0)
        {
            return isOpen && entry.ValueKind == JsonValueKind.String
                ? entry.GetString()!
                : place.ToString(CultureInfo.InvariantCulture);
        }

        return string.Join(
            ", ",
            key.Select(property =>
                entry.ValueKind == JsonValueKind.Object
                && entry.TryGetProperty(property, out var value)
                    ? value.ToString()
                    : ""
            )
        );
    }
}
