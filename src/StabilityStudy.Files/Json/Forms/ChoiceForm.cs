using System.Collections;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A record of one of several kinds, told apart by the property "kind".</summary>
/// <param name="name">Its name among the definitions of the schema.</param>
internal sealed class ChoiceForm<T>(string name) : Form<T>, IEnumerable
    where T : class
{
    private readonly List<IKind> _kinds = [];

    private interface IKind
    {
        string Word { get; }

        Type Type { get; }

        bool TryWrite(Utf8JsonWriter json, T value);

        JsonObject Schema(SchemaDefinitions definitions);

        void Compare(
            JsonElement stated,
            JsonElement computed,
            string path,
            AnalysisComparison comparison
        );
    }

    /// <summary>The types of the kinds.</summary>
    public IEnumerable<Type> Types => _kinds.Select(kind => kind.Type);

    /// <summary>Declares the next kind.</summary>
    /// <param name="word">The word under "kind".</param>
    /// <param name="form">The form of the rest.</param>
    public void Add<TKind>(string word, ObjectForm<TKind> form)
        where TKind : class, T =>
        _kinds.Add(new Kind<TKind>(ObjectForm.OwnerOf(name, word), word, form));

    public override void Write(Utf8JsonWriter json, T value)
    {
        if (!_kinds.Exists(kind => kind.TryWrite(json, value)))
        {
            throw new InvalidOperationException(
                $"{value.GetType().Name} is no kind of {name} that the file knows."
            );
        }
    }

    public override JsonNode Schema(SchemaDefinitions definitions)
    {
        return definitions.Reference(
            name,
            () =>
                new JsonObject
                {
                    ["oneOf"] = new JsonArray([.. _kinds.Select(kind => kind.Schema(definitions))]),
                }
        );
    }

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        var word = KindOf(computed);
        if (KindOf(stated) != word)
        {
            comparison.Differs(path, stated, computed);
            return;
        }

        _kinds.Single(kind => kind.Word == word).Compare(stated, computed, path, comparison);
    }

    IEnumerator IEnumerable.GetEnumerator() => _kinds.GetEnumerator();

    private static string? KindOf(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object
        && element.TryGetProperty("kind", out var kind)
        && kind.ValueKind == JsonValueKind.String
            ? kind.GetString()
            : null;

    private sealed class Kind<TKind>(string owner, string word, ObjectForm<TKind> form) : IKind
        where TKind : class, T
    {
        public string Word => word;

        public Type Type => typeof(TKind);

        public bool TryWrite(Utf8JsonWriter json, T value)
        {
            if (value is not TKind own)
            {
                return false;
            }

            json.WriteStartObject();
            json.WriteString("kind", word);
            form.WriteProperties(json, own);
            json.WriteEndObject();
            return true;
        }

        public JsonObject Schema(SchemaDefinitions definitions) =>
            form.Definition(definitions, word);

        public void Compare(
            JsonElement stated,
            JsonElement computed,
            string path,
            AnalysisComparison comparison
        ) => form.Compare(owner, stated, computed, path, comparison);
    }
}
