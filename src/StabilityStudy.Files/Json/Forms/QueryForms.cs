using System.Text.Json;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Data queries: by code and place, with what was read; their words belong to the program.</summary>
internal static class QueryForms
{
    /// <summary>Where something was read.</summary>
    public static readonly ObjectForm<QuerySource> QuerySourceForm = new("querySource")
    {
        { "file", v => v.File, Form.Text },
        { "line", v => v.Line, Form.Count.OrNull() },
        { "column", v => v.Column, Form.Text.OrNull() },
    };

    private static readonly ObjectForm<DataQuery> s_read = new()
    {
        { "code", v => v.Code, Form.Text },
        { "severity", v => v.Severity, Form.Word<Severity>() },
        { "source", v => v.Source, QuerySourceForm },
        { "observed", v => v.Observed, Form.Text },
    };

    /// <summary>A query of analysis.json.</summary>
    public static readonly ObjectForm<DataQuery> DataQueryForm = new("dataQuery")
    {
        s_read.Properties,
        { "values", v => v.Values.Items, Form.List(Form.Text) },
    };

    /// <summary>The queries of analysis.json.</summary>
    public static readonly Form<ImmutableArray<DataQuery>> DataQueriesForm = new QueryListForm(
        DataQueryForm
    );

    /// <summary>Queries with their words and the reference by which study.toml answers them.</summary>
    public static readonly Form<ImmutableArray<DataQuery>> WordedQueriesForm = Form.List(
        new ObjectForm<DataQuery>("query")
        {
            s_read.Properties,
            { "message", v => v.Message, Form.Text },
            { "action", v => v.Action, Form.Text },
            { "reference", QueryReference.Of, Form.Text },
        }
    );

    /// <summary>The queries of a study as a document of their own.</summary>
    public static readonly ObjectForm<ImmutableArray<DataQuery>> DocumentForm = new("queryDocument")
    {
        { "queries", v => v, WordedQueriesForm },
    };
}

/// <summary>The data queries of a study: compared by code and place, for codes that both versions know.</summary>
internal sealed class QueryListForm(Form<DataQuery> item) : Form<ImmutableArray<DataQuery>>
{
    private readonly Form<ImmutableArray<DataQuery>> _list = Form.List(item);

    public override void Write(Utf8JsonWriter json, ImmutableArray<DataQuery> value) =>
        _list.Write(json, value);

    public override System.Text.Json.Nodes.JsonNode Schema(SchemaDefinitions definitions) =>
        _list.Schema(definitions);

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (stated.ValueKind != JsonValueKind.Array)
        {
            comparison.Differs(path, stated, computed);
            return;
        }

        var others = stated.EnumerateArray().Select(Name).ToList();
        foreach (var (code, name) in computed.EnumerateArray().Select(Name))
        {
            if (!others.Remove((code, name)))
            {
                comparison.MissingQuery(code, name);
            }
        }

        foreach (var (code, name) in others)
        {
            comparison.QueryInReportOnly(code, name);
        }
    }

    private static (string Code, string Name) Name(JsonElement query)
    {
        var code = Part(query, "code");
        var source = query.TryGetProperty("source", out var place) ? place : default;
        string[] parts =
        [
            Part(source, "file"),
            Part(source, "line"),
            Part(source, "column"),
            Part(query, "observed"),
        ];
        return (code, string.Join(", ", parts.Where(part => part.Length > 0)));
    }

    private static string Part(JsonElement element, string property) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(property, out var value)
            ? value.ToString()
            : "";
}
