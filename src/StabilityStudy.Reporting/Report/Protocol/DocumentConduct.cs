using StabilityStudy.Reporting.Report.Conduct;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>How the study is run, as the document tells it beside its first page.</summary>
internal static class DocumentConduct
{
    public static IEnumerable<Definition> Of(StudyProtocol protocol) =>
        [
            .. ProtocolDefinitions.InBrief(
                protocol,
                $"{Days(protocol)}at least {NumberText.Count(protocol.MinimumDays)} for a criterion on the mean; eight to ten are better."
            ),
            .. ProtocolDefinitions.WithRulesTogether(protocol),
            .. LevelMeanings(protocol),
        ];

    private static string Days(StudyProtocol protocol) =>
        protocol.PlannedDays is { } days ? $"{NumberText.Count(days)} are planned, " : "";

    /// <summary>What the wrong side of the decision levels means for a patient, or that the protocol does not state it.</summary>
    private static IEnumerable<Definition> LevelMeanings(StudyProtocol protocol)
    {
        var missing = protocol
            .Analytes.Select(analyte =>
                (analyte.Id, Levels: LevelMeaningWords.Missing(analyte, protocol))
            )
            .Where(item => item.Levels is not null)
            .Select(item => $"{item.Id} {item.Levels}")
            .ToArray();
        string[] stated =
        [
            .. protocol
                .Analytes.Select(analyte => (analyte.Id, Meanings: LevelMeaningWords.Of(analyte)))
                .Where(item => item.Meanings is not null)
                .Select(item => $"{item.Id}: a result {item.Meanings}"),
            .. missing.Length == 0
                ? Array.Empty<string>()
                :
                [
                    $"what the wrong side means for a patient is not stated: {string.Join("; ", missing)}",
                ],
        ];
        if (stated.Length > 0)
        {
            yield return new Definition("Decision levels", string.Join("; ", stated) + ".");
        }
    }
}
