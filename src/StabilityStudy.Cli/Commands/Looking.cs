using System.CommandLine;
using System.Text.Json;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Looks;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Commands;

/// <summary>What analyze and report share about looking: counts only before the planned number is complete, and a look on record.</summary>
internal static class Looking
{
    private const string Why =
        "Changes and conclusions are shown when the planned number is complete, or when study.toml states \"ended_early\". --interim shows them now: that is a look, it goes on record, nothing is concluded, and specimens that come after it count only where the protocol planned for looks.";

    private const string Warning =
        "Interim: collection is not complete, so nothing is concluded. This look is on record; specimens that come after it count only where the protocol planned for looks.";

    public static Option<bool> Interim() =>
        new("--interim")
        {
            Description =
                "Show changes before the planned number of specimens is complete. This is a look: it goes on record, nothing is concluded, and specimens that come after it are not counted unless the protocol planned for looks.",
        };

    /// <summary>Whether figures may be shown; otherwise the counts are, and why.</summary>
    public static bool MayShow(Terminal terminal, AnalyzedStudy study, bool interim, bool json)
    {
        if (!study.Analysis.IsInterim)
        {
            return true;
        }

        if (interim)
        {
            Say(terminal, Warning);
            return true;
        }

        if (json)
        {
            terminal.WriteJson(Counts(study.Analysis));
        }
        else
        {
            terminal.Out.Write(StudyPipeline.SummarizeCounts(study, terminal.Width) + '\n');
        }

        Say(terminal, Why);
        return false;
    }

    /// <summary>The line of the record with the look, when nobody has looked at these data before.</summary>
    /// <param name="entry">The line without the look.</param>
    /// <param name="record">Content of record.jsonl.</param>
    /// <param name="analysis">What is looked at.</param>
    public static RecordEntry With(
        RecordEntry entry,
        ReadOnlyMemory<byte> record,
        StudyAnalysis analysis
    )
    {
        var data = analysis.Identity.DataSha256;
        return LookRecord.Holds(record, data)
            ? entry
            : entry with
            {
                DataSha256 = data,
                Look = LookOf.Analysis(analysis),
            };
    }

    private static void Say(Terminal terminal, string text)
    {
        foreach (var line in TextLines.WrapLine(text, terminal.Width))
        {
            terminal.Error.WriteLine(line);
        }
    }

    private static byte[] Counts(StudyAnalysis analysis)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true }))
        {
            json.WriteStartObject();
            json.WriteBoolean("countsOnly", true);
            json.WriteStartArray("collection");
            foreach (var sequence in analysis.Sequences)
            {
                json.WriteStartObject();
                json.WriteString("analyte", sequence.Analyte);
                json.WriteString("group", sequence.Group);
                json.WriteString("storage", sequence.Storage);
                json.WriteNumber("planned", sequence.Collection.Planned);
                json.WriteNumber("usable", sequence.Collection.Usable);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return buffer.ToArray();
    }
}
