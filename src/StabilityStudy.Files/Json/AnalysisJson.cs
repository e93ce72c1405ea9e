using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Json;

/// <summary>Writes and reads analysis.json. Decimals are texts, estimates are numbers, enum members are words.</summary>
public static class AnalysisJson
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "analysis.json";

    // Relaxed only in what need not be escaped: "<0.27" and "°C" stay readable. The file is never part of a web page.
    internal static readonly JsonSerializerOptions Options = new(
        AnalysisJsonContext.Default.Options
    )
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        TypeInfoResolver = AnalysisJsonContext.Default.WithAddedModifier(RequireEveryProperty),
    };

    internal static readonly JsonTypeInfo<StudyAnalysis> AnalysisType =
        (JsonTypeInfo<StudyAnalysis>)Options.GetTypeInfo(typeof(StudyAnalysis));

    internal static readonly JsonTypeInfo<QueryDocument> QueryDocumentType =
        (JsonTypeInfo<QueryDocument>)Options.GetTypeInfo(typeof(QueryDocument));

    /// <summary>Writes an analysis: UTF-8, indented, line feeds; the same analysis gives the same bytes.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static byte[] Write(StudyAnalysis analysis) =>
        [.. JsonSerializer.SerializeToUtf8Bytes(analysis, AnalysisType), (byte)'\n'];

    /// <summary>Reads an analysis strictly.</summary>
    /// <returns>The analysis, or a stop query with the place in the file.</returns>
    public static Outcome<StudyAnalysis> Read(ReadOnlyMemory<byte> utf8)
    {
        var queries = new QueryList();
        return queries.Conclude(Read(utf8, queries));
    }

    // A property outside the constructor would otherwise be absent without a word.
    private static void RequireEveryProperty(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
        {
            property.IsRequired |= property.Set is not null;
        }
    }

    private static StudyAnalysis? Read(ReadOnlyMemory<byte> utf8, QueryList queries)
    {
        try
        {
            var analysis = JsonSerializer.Deserialize(
                Utf8Text.WithoutMark(utf8).Span,
                AnalysisType
            );
            if (analysis is { Format: StudyAnalysis.CurrentFormat })
            {
                return analysis;
            }

            queries.Add(
                FileQueries.UnsupportedFormat,
                new QuerySource(FileName, null, "format"),
                FormattableString.Invariant($"{analysis?.Format}"),
                FormattableString.Invariant(
                    $"This version reads format {StudyAnalysis.CurrentFormat}."
                ),
                "Use the version of the program that wrote the file."
            );
        }
        catch (Exception exception)
            when (exception is JsonException or ArgumentException or InvalidOperationException)
        {
            var place = exception as JsonException;
            queries.Add(
                FileQueries.NotAnAnalysis,
                new QuerySource(FileName, (int?)place?.LineNumber + 1, place?.Path),
                "",
                "The file is not an analysis as this program writes it.",
                "Do not edit the file; make it again from the study."
            );
        }

        return null;
    }
}
