using System.Text.Encodings.Web;
using System.Text.Json;

namespace StabilityStudy.Cli.Console;

/// <summary>Objects of JSON as the terminal writes them for a program to read.</summary>
internal static class TerminalJson
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes one object.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="write">Writes its properties.</param>
    public static void WriteJson(this Terminal terminal, Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        terminal.WriteJson(buffer.ToArray());
    }

    /// <summary>Writes a property that is a list of texts.</summary>
    public static void WriteTexts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
