using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The schemas that are named and referred to, and what properties mean whose declaration leaves it to the member of that name.</summary>
/// <param name="meaningOf">What the member of a type means, by the name of the property; empty where nothing says it.</param>
internal sealed class SchemaDefinitions(Func<Type, string, string> meaningOf)
{
    /// <summary>Every definition by its name.</summary>
    public JsonObject All { get; } = [];

    /// <summary>What a property of a type means.</summary>
    public string MeaningOf(Type type, string property) => meaningOf(type, property);

    /// <summary>A reference to a definition, which is made at the first one.</summary>
    public JsonObject Reference(string name, Func<JsonObject> definition)
    {
        if (!All.ContainsKey(name))
        {
            // Also where the definition refers to itself.
            All[name] = null;
            All[name] = definition();
        }

        return new JsonObject { ["$ref"] = "#/$defs/" + name };
    }
}
