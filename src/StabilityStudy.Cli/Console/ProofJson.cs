using System.Text.Json;
using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes a proof for a program to read.</summary>
internal static class ProofJson
{
    public static void Write(Terminal terminal, ProgramProof proof, ProofRun run) =>
        terminal.WriteJson(json =>
        {
            json.WriteBoolean("agrees", proof.Agrees);
            json.WriteString("program", run.Program);
            json.WriteString("operatingSystem", run.OperatingSystem);
            json.WriteString("architecture", run.Architecture);
            json.WriteString("runTime", run.RunTime);
            json.WriteString("culture", run.Culture);
            json.WriteString(
                "at",
                run.At.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
            );
            json.WriteString("timeZone", run.TimeZone);
            json.WriteString("by", run.By);
            json.WriteStartArray("cases");
            foreach (var item in proof.Parts.SelectMany(part => part.Cases))
            {
                json.WriteStartObject();
                json.WriteString("case", item.Title);
                json.WriteString("source", item.Source);
                json.WriteString("reasonOfTolerance", item.Reason);
                json.WriteStartArray("figures");
                foreach (var figure in item.Figures)
                {
                    WriteFigure(json, figure);
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });

    private static void WriteFigure(Utf8JsonWriter json, ProofFigure figure)
    {
        json.WriteStartObject();
        json.WriteString("figure", figure.Name);
        json.WriteString("expected", figure.Expected);
        json.WriteString("found", figure.Found);
        json.WriteString("tolerance", figure.Tolerance);
        json.WriteString(
            "outcome",
            figure.Agreement switch
            {
                Agreement.Differs => "differs",
                Agreement.NotChecked => "not-checked",
                Agreement.Agrees => "agrees",
            }
        );
        json.WriteEndObject();
    }
}
