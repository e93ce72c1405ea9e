using System.Buffers;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A list with each entry on a line of its own, as in a table.</summary>
/// <param name="item">The form of its entries.</param>
/// <param name="list">The list otherwise.</param>
internal sealed class LinesForm<T>(Form<T> item, Form<ImmutableArray<T>> list)
    : Form<ImmutableArray<T>>
{
    public override void Write(Utf8JsonWriter json, ImmutableArray<T> value)
    {
        json.WriteStartArray();
        var indent = json.CurrentDepth * json.Options.IndentSize;
        var line = new ArrayBufferWriter<byte>();
        using var writer = new Utf8JsonWriter(line, json.Options with { Indented = false });
        foreach (var entry in value)
        {
            line.ResetWrittenCount();
            writer.Reset();
            line.Write("\n"u8);
            line.GetSpan(indent)[..indent].Fill((byte)' ');
            line.Advance(indent);
            item.Write(writer, entry);
            writer.Flush();
            json.WriteRawValue(line.WrittenSpan, skipInputValidation: true);
        }

        json.WriteEndArray();
    }

    public override JsonNode Schema(SchemaDefinitions definitions) => list.Schema(definitions);

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    ) => list.Compare(stated, computed, path, comparison);
}
