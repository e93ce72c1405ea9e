using System.Text.Json;

namespace StabilityStudy.Files.Queries;

/// <summary>A data query whose kind gives it its words, raised or read from the analysis.json of a report.</summary>
internal static class StatedQuery
{
    /// <summary>The words of a kind that needs no values beside what was read.</summary>
    public static Func<DataQuery, DataQuery?> Words(Func<DataQuery, string> text) =>
        query => query.Values.Items.IsEmpty ? query with { Text = text(query) } : null;

    /// <summary>A query with its words; null where its kind has none for these values.</summary>
    public static DataQuery? Of(
        QueryKind kind,
        QuerySource source,
        string observed,
        ImmutableArray<string> values
    ) =>
        kind.Worded?.Invoke(
            new DataQuery(kind, source, observed, "") { Values = new QueryValues(values) }
        );

    /// <summary>The query that an analysis.json states; null where it is no such query or cannot be one.</summary>
    public static DataQuery? Restore(JsonElement stated)
    {
        var code = stated.GetProperty("code").GetString();
        if (
            QueryCatalog.All.FirstOrDefault(kind => kind.Code == code)
                is not { Worded: not null } kind
            || !stated.TryGetProperty("values", out var given)
        )
        {
            return null;
        }

        var source = stated.GetProperty("source");
        var place = new QuerySource(
            source.GetProperty("file").GetString() ?? "",
            source.GetProperty("line") is { ValueKind: JsonValueKind.Number } line
                ? line.GetInt32()
                : null,
            source.GetProperty("column").GetString()
        );
        var observed = stated.GetProperty("observed").GetString() ?? "";
        ImmutableArray<string> values =
        [
            .. given.EnumerateArray().Select(value => value.GetString() ?? ""),
        ];
        return
            place.Line is null
            && observed.Length == 0
            && values is [var count]
            && int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var more)
            ? QueryList.More(place.File, kind, more)
            : Of(kind, place, observed, values);
    }
}
