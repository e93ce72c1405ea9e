using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml;

namespace StabilityStudy.Files.Tests;

/// <summary>Puts the pairs of a file of form 3 together again as form 2 stated them, by what FORMATS.md says of them.</summary>
internal static class WholePairs
{
    private static readonly string[] s_ofRun = ["instrument", "lot", "calibration", "operator"];

    public static JsonObject Of(JsonObject study)
    {
        var specimens = study["specimens"]!
            .AsArray()
            .ToDictionary(item => (string)item!["specimen"]!, item => item!.AsObject());
        var runs = study["runs"]!
            .AsArray()
            .ToDictionary(
                item => ((string)item!["analyte"]!, (string)item["run"]!),
                item => item!.AsObject()
            );
        foreach (var sequence in study["sequences"]!.AsArray())
        {
            var analyte = (string)sequence!["analyte"]!;
            var baselines = sequence["baselines"]!
                .AsArray()
                .ToDictionary(item => (string)item!["specimen"]!, item => item!.AsObject());
            foreach (var cell in sequence["cells"]!.AsArray())
            {
                cell!["pairs"] = new JsonArray([
                    .. cell["pairs"]!
                        .AsArray()
                        .Select(pair => Pair(pair!.AsObject(), specimens, baselines, Run)),
                ]);
            }

            sequence.AsObject().Remove("baselines");

            JsonObject Run(JsonObject result) =>
                result["run"] is { } run ? runs[(analyte, (string)run!)] : [];
        }

        return study;
    }

    private static JsonObject Pair(
        JsonObject pair,
        Dictionary<string, JsonObject> specimens,
        Dictionary<string, JsonObject> baselines,
        Func<JsonObject, JsonObject> run
    )
    {
        var code = (string)pair["specimen"]!;
        var specimen = specimens[code];
        var delayed = pair["delayed"]?.AsObject();
        var tube = delayed is null
            ? null
            : specimen["tubes"]!
                .AsArray()
                .Single(item => (string)item!["tube"]! == (string)delayed["tube"]!);
        var collectedAt = Time(tube?["collectedAt"] ?? specimen["collectedAt"]);
        var testedAt = Time(delayed?["testedAt"]);
        var whole = new JsonObject
        {
            ["specimen"] = code,
            ["subject"] = (string)specimen["subject"]!,
            ["collectionDay"] = ((string)specimen["collectedAt"]!)[..10],
            ["status"] = (string)pair["status"]!,
            ["baseline"] = baselines.TryGetValue(code, out var baseline)
                ? Measurement(baseline, run(baseline))
                : null,
            ["delayed"] = delayed is null ? null : Measurement(delayed, run(delayed)),
            ["isOutlier"] = pair.ContainsKey("isOutlier"),
            ["isOfDelayedTube"] = pair.ContainsKey("isOfDelayedTube"),
            ["timeBeforeSpinning"] = Duration(Time(tube?["spunAt"]) - collectedAt),
            ["timeAfterSpinning"] = Duration(testedAt - Time(tube?["spunAt"])),
        };
        if (
            Time(tube?["frozenAt"]) is { } frozenAt
            && Time(tube?["thawedAt"]) is { } thawedAt
            && testedAt is not null
        )
        {
            whole["frozen"] = new JsonObject
            {
                ["beforeFreezing"] = Duration(frozenAt - collectedAt),
                ["afterThawing"] = Duration(testedAt - thawedAt),
            };
        }

        whole["countsForAgreement"] = !pair.ContainsKey("countsForAgreement");
        whole["isExcludedKnowing"] = pair.ContainsKey("isExcludedKnowing");
        whole["isLost"] = pair.ContainsKey("isLost");
        whole["changePercent"] = pair["changePercent"]?.DeepClone();
        return whole;
    }

    private static JsonObject Measurement(JsonObject result, JsonObject run)
    {
        var whole = new JsonObject
        {
            ["tube"] = (string)result["tube"]!,
            ["result"] =
                result["result"]!.GetValueKind() == JsonValueKind.String
                    ? new JsonObject
                    {
                        ["kind"] = "measured",
                        ["value"] = (string)result["result"]!,
                        ["text"] = (string)result["result"]!,
                    }
                    : result["result"]!.DeepClone(),
            ["testedAt"] = result["testedAt"]?.DeepClone(),
            ["delay"] = result["delay"]?.DeepClone(),
            ["run"] = (string?)result["run"] ?? "",
            ["sourceRow"] = result["sourceRow"]?.DeepClone(),
        };
        foreach (var name in s_ofRun)
        {
            Assert.False(run.ContainsKey(name) && result.ContainsKey(name), name);
            whole[name] = (string?)run[name] ?? (string?)result[name] ?? "";
        }

        return whole;
    }

    private static DateTimeOffset? Time(JsonNode? time) =>
        time is null ? null : DateTimeOffset.Parse((string)time!, CultureInfo.InvariantCulture);

    private static string? Duration(TimeSpan? duration) =>
        duration is { } known ? XmlConvert.ToString(known) : null;
}
