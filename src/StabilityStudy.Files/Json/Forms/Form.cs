using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>
/// How values of one kind stand in a JSON file. It is declared once, by hand and with its own names, and gives the
/// writing, the published schema and the comparison of two files, so that nothing inside the program can change a file
/// that others read.
/// </summary>
/// <typeparam name="T">The values.</typeparam>
internal abstract class Form<T>
{
    /// <summary>Writes a value.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public abstract void Write(Utf8JsonWriter json, T value);

    /// <summary>The JSON Schema of the values.</summary>
    /// <param name="definitions">Takes the schemas that are named and referred to.</param>
    public abstract JsonNode Schema(SchemaDefinitions definitions);

    /// <summary>Compares what a report states with what was computed again.</summary>
    /// <param name="stated">The element of the report.</param>
    /// <param name="computed">The element as it was computed again.</param>
    /// <param name="path">Where both stand, for people.</param>
    /// <param name="comparison">Takes the differences.</param>
    public virtual void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (stated.GetRawText() != computed.GetRawText())
        {
            comparison.Differs(path, stated, computed);
        }
    }
}
