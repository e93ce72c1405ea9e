using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Json.Entries;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Json;

/// <summary>
/// Writes analysis.json: codes, numbers, decimals as texts, durations and times of ISO 8601; no sentences. Its form is a
/// contract of its own, declared in the folder Forms.
/// </summary>
public static class AnalysisJson
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "analysis.json";

    /// <summary>
    /// The number of the form that this program writes. In 2 each pair stated all of its specimen, tubes and runs; 1 was that of version
    /// 0.1.0, which changed with the program.
    /// </summary>
    public const int Format = 3;

    /// <summary>Significant digits of a computed figure.</summary>
    public const int Digits = 11;

    /// <summary>The form of versions 0.2.0 to 0.5.0, whose reports are compared in it.</summary>
    internal const int EarlierFormat = 2;

    // Relaxed only in what need not be escaped: "<0.27" and "°C" stay readable. The file is never part of a web page.
    private static readonly JsonWriterOptions s_layout = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Indented = true,
        NewLine = "\n",
    };

    /// <summary>Writes an analysis: UTF-8, indented, line feeds; the same analysis gives the same bytes.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static byte[] Write(StudyAnalysis analysis) => WriteInForm(analysis, Format);

    /// <summary>Writes an analysis in the form that a report states.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="format">Number of the form: this version's, or that of an earlier one to compare with.</param>
    /// <exception cref="ArgumentException">A number is not finite, or there is no such form.</exception>
    public static byte[] WriteInForm(StudyAnalysis analysis, int format)
    {
        var written = new WrittenBytes();
        WriteInForm(analysis, format, written);
        return written.ToArray();
    }

    /// <summary>Writes an analysis piece by piece, for a place that takes a piece before the next is made.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="place">Where to.</param>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static void Write(StudyAnalysis analysis, IBufferWriter<byte> place) =>
        WriteInForm(analysis, Format, place);

    private static void WriteInForm(StudyAnalysis analysis, int format, IBufferWriter<byte> place)
    {
        var form = FormOf(format);
        Write(json => form.Write(json, StudyEntry.Of(analysis)), place);
    }

    /// <summary>Compares what a report states with the same study analyzed again.</summary>
    /// <param name="stated">The analysis in the report.</param>
    /// <param name="computed">The bytes of the analysis as this version writes it in the form of the report.</param>
    /// <param name="version">How the version that made the report stands to this one.</param>
    /// <param name="knewThen">Whether that version could raise a data query of a code.</param>
    /// <param name="knownNow">Whether this version can.</param>
    /// <param name="hadThen">Whether the version that made the report states a property, by its name as in <see cref="Properties"/>.</param>
    /// <exception cref="ArgumentException">There is no form of that number.</exception>
    public static AnalysisDifferences Compare(
        StatedAnalysis stated,
        ReadOnlyMemory<byte> computed,
        ComparedVersion version,
        Func<string, bool> knewThen,
        Func<string, bool> knownNow,
        Func<string, bool> hadThen
    )
    {
        var comparison = new AnalysisComparison(version, knewThen, knownNow, hadThen);
        using var document = JsonDocument.Parse(computed);
        FormOf(stated.Format).Compare(stated.Root, document.RootElement, "analysis", comparison);
        return comparison.Differences;
    }

    private static ObjectForm<StudyEntry> FormOf(int format) =>
        format switch
        {
            Format => AnalysisForms.StudyAnalysisForm,
            EarlierFormat => AnalysisForms.EarlierForm,
            _ => throw new ArgumentOutOfRangeException(nameof(format)),
        };

    /// <summary>What this version states: each property after the definition of the schema that has it, "cell.pairs", with the kind where a definition has several.</summary>
    public static ImmutableHashSet<string> Properties()
    {
        var definitions = new SchemaDefinitions((_, _) => "");
        AnalysisForms.StudyAnalysisForm.Schema(definitions);
        return
        [
            .. definitions.All.SelectMany(definition =>
                definition.Value!["oneOf"] is JsonArray kinds
                    ? kinds.SelectMany(kind =>
                        Named(ObjectForm.OwnerOf(definition.Key, KindOf(kind!)), kind!)
                    )
                    : Named(definition.Key, definition.Value)
            ),
        ];

        static IEnumerable<string> Named(string owner, JsonNode of) =>
            of["properties"]!
                .AsObject()
                .Where(property => property.Value?["const"] is null)
                .Select(property => ObjectForm.NameOf(owner, property.Key));

        static string KindOf(JsonNode kind) =>
            kind["properties"]!["kind"]!["const"]!.GetValue<string>();
    }

    /// <summary>The published schema (JSON Schema 2020-12).</summary>
    /// <param name="meaningOf">What the member of a type means, by the name of its property in the file.</param>
    internal static string Schema(Func<Type, string, string> meaningOf)
    {
        var definitions = new SchemaDefinitions(meaningOf);
        AnalysisForms.StudyAnalysisForm.Schema(definitions);
        var schema = definitions.All["studyAnalysis"]!.DeepClone().AsObject();
        definitions.All.Remove("studyAnalysis");
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", FileName);
        schema["$defs"] = definitions.All;
        return System.Text.Encoding.UTF8.GetString(Write(json => schema.WriteTo(json)));
    }

    internal static byte[] Write(Action<Utf8JsonWriter> write)
    {
        var written = new WrittenBytes();
        Write(write, written);
        return written.ToArray();
    }

    private static void Write(Action<Utf8JsonWriter> write, IBufferWriter<byte> place)
    {
        using (var json = new Utf8JsonWriter(place, s_layout))
        {
            write(json);
        }

        place.Write("\n"u8);
    }
}
