using System.Collections;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A property of a record.</summary>
internal interface IProperty<in T>
{
    string Name { get; }

    string Note { get; }

    bool IsDecisive { get; }

    bool MayBeLeftOut { get; }

    bool IsAnswerWhenLeftOut { get; }

    void Write(Utf8JsonWriter json, T value);

    JsonNode Schema(SchemaDefinitions definitions);

    void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    );
}

/// <summary>How the properties of records are named.</summary>
internal static class ObjectForm
{
    /// <summary>The kind of a definition that has several.</summary>
    public static string OwnerOf(string definition, string kind) => $"{definition}:{kind}";

    /// <summary>A property with what has it.</summary>
    public static string NameOf(string owner, string property) => $"{owner}.{property}";
}

/// <summary>A record: a JSON object with every property but those of a <see cref="LeftOutForm{T}"/> without a value, in the order of the declaration.</summary>
/// <param name="name">Its name among the definitions of the schema; a kind of a <see cref="ChoiceForm{T}"/>, and a record that others derive from, need none.</param>
internal sealed class ObjectForm<T>(string name = "") : Form<T>, IEnumerable
{
    private readonly List<IProperty<T>> _properties = [];

    /// <summary>Its name among the definitions of the schema.</summary>
    public string Name => name;

    /// <summary>What it declares, for the records that derive from this one.</summary>
    public IEnumerable<IProperty<T>> Properties => _properties;

    /// <summary>Declares the properties of the record that this one derives from.</summary>
    public void Add(IEnumerable<IProperty<T>> inherited) => _properties.AddRange(inherited);

    /// <summary>Declares the next property.</summary>
    /// <param name="property">Its name in the file.</param>
    /// <param name="get">Where its value comes from.</param>
    /// <param name="form">Its form.</param>
    /// <param name="note">What it means, for the schema and FORMATS.md; empty where that is what the member of the same name means.</param>
    public void Add<TValue>(
        string property,
        Func<T, TValue> get,
        Form<TValue> form,
        string note = ""
    ) => _properties.Add(new Property<TValue>(property, get, form, note));

    /// <summary>Writes the properties without the braces.</summary>
    public void WriteProperties(Utf8JsonWriter json, T value)
    {
        foreach (var property in _properties)
        {
            property.Write(json, value);
        }
    }

    public override void Write(Utf8JsonWriter json, T value)
    {
        json.WriteStartObject();
        WriteProperties(json, value);
        json.WriteEndObject();
    }

    public override JsonNode Schema(SchemaDefinitions definitions)
    {
        return definitions.Reference(name, () => Definition(definitions, kind: null));
    }

    /// <summary>The schema itself, for a record that is one of several kinds with the kind in front.</summary>
    public JsonObject Definition(SchemaDefinitions definitions, string? kind)
    {
        var properties = new JsonObject();
        if (kind is not null)
        {
            properties["kind"] = new JsonObject { ["const"] = kind };
        }

        foreach (var property in _properties)
        {
            properties[property.Name] = property.Schema(definitions);
        }

        var leftOut = _properties
            .Where(property => property.MayBeLeftOut)
            .Select(property => property.Name)
            .ToImmutableHashSet();

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = new JsonArray([
                .. properties
                    .Select(property => property.Key)
                    .Where(property => !leftOut.Contains(property))
                    .Select(property => (JsonNode)property),
            ]),
            ["additionalProperties"] = false,
        };
    }

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    ) => Compare(name, stated, computed, path, comparison);

    /// <summary>The same for a record that is one of several kinds.</summary>
    public void Compare(
        string owner,
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (stated.ValueKind != JsonValueKind.Object || computed.ValueKind != JsonValueKind.Object)
        {
            comparison.Differs(path, stated, computed);
            return;
        }

        foreach (var property in _properties)
        {
            var place = path + "." + property.Name;
            var isComputed = computed.TryGetProperty(property.Name, out var again);
            if (!stated.TryGetProperty(property.Name, out var value))
            {
                if (isComputed && property.IsAnswerWhenLeftOut)
                {
                    comparison.Differs($"{place} is missing in the report.");
                }
                else if (isComputed)
                {
                    comparison.MissingInReport(
                        place,
                        ObjectForm.NameOf(owner, property.Name),
                        property.IsDecisive
                    );
                }
            }
            else if (isComputed)
            {
                property.Compare(value, again, place, comparison);
            }
            else
            {
                comparison.Differs($"{place} is in the report only.");
            }
        }

        // Of the kinds of a choice both sides state which it is, and that was compared.
        var known = _properties.Select(property => property.Name).ToImmutableHashSet();
        foreach (var other in stated.EnumerateObject().Where(item => !known.Contains(item.Name)))
        {
            if (other.Name != "kind" || !computed.TryGetProperty(other.Name, out _))
            {
                comparison.InReportOnly(path + "." + other.Name);
            }
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => _properties.GetEnumerator();

    private sealed class Property<TValue>(
        string property,
        Func<T, TValue> get,
        Form<TValue> form,
        string note
    ) : IProperty<T>
    {
        private readonly JsonEncodedText _encoded = JsonEncodedText.Encode(property);

        public string Name => property;

        public string Note => note;

        public bool IsDecisive => form is WeighedForm<TValue> { Weight: ComparisonWeight.Decisive };

        public bool MayBeLeftOut => form is LeftOutForm<TValue>;

        public bool IsAnswerWhenLeftOut => form is LeftOutForm<TValue> { IsAnswer: true };

        public void Write(Utf8JsonWriter json, T value)
        {
            var written = get(value);
            if (form is LeftOutForm<TValue> optional && !optional.IsThere(written))
            {
                return;
            }

            json.WritePropertyName(_encoded);
            form.Write(json, written);
        }

        public JsonNode Schema(SchemaDefinitions definitions)
        {
            var schema = form.Schema(definitions);
            var meaning = note.Length > 0 ? note : definitions.MeaningOf(typeof(T), property);
            if (meaning.Length > 0)
            {
                schema["description"] = meaning;
            }

            return schema;
        }

        public void Compare(
            JsonElement stated,
            JsonElement computed,
            string path,
            AnalysisComparison comparison
        ) => form.Compare(stated, computed, path, comparison);
    }
}
