namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What belongs to the approval of a window, and when the study is due again.</summary>
internal static class DecisionSection
{
    public const string Title = "If a window is approved";

    public static Section Of(StudyAnalysis analysis) =>
        new(Title, StartsOnNewPage: false, [new Bullets(Conditions(analysis))]);

    private static ImmutableArray<string> Conditions(StudyAnalysis analysis)
    {
        var conditions = ImmutableArray.CreateBuilder<string>();
        conditions.Add(
            "The medical director decides on page 1. A window may be shorter than the one supported, never longer."
        );
        conditions.Add(
            $"Every {(analysis.Protocol.TimeOrigin == TimeOrigin.Thawing ? "portion" : "request")} states the time of {OriginWords.Start(analysis.Protocol.TimeOrigin)}; a specimen without it, or past the window, is rejected or reported as the local procedure requires. The procedure manual names storage, cap, spinning and rejection as studied here; staff are told of the change and of the day from which it holds."
        );
        if (
            analysis
                .Sequences.SelectMany(sequence => sequence.Windows)
                .Any(window => window.ManufacturerLimit == ManufacturerStanding.Beyond)
        )
        {
            conditions.Add(
                "A window beyond the manufacturer's limit is a modified test: performance must be established, and the procedure names it so."
            );
        }

        if (analysis.Protocol.Analytes.Any(analyte => analyte.ManufacturerLimit is null))
        {
            conditions.Add(
                "Where the protocol states no manufacturer's limit, read the instructions for use before a window is put into force."
            );
        }

        conditions.Add(
            "Repeat before use of another reagent, instrument or method, tube type or additive volume, storage temperature, transport or way of spinning: none of these was studied. At a new lot of reagent verify with a few specimens and compare the drift found here. Common practice."
        );
        conditions.Add(
            "Repeat when controls, proficiency results or complaints give reason to doubt, when a patient group is added, or when the manufacturer changes its instructions. Review on the day that the laboratory's document control sets, and at every revision of the procedure."
        );
        return conditions.ToImmutable();
    }
}
