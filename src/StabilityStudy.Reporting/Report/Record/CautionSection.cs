namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The cautions that every report carries.</summary>
internal static class CautionSection
{
    /// <summary>The three that bear on the decision.</summary>
    public static Paragraph OnFirstPage() =>
        new(
            "For qualified laboratory staff; the medical director decides. "
                + "Local regulation, the manufacturer's instructions and the accreditor's rules prevail. "
                + "Valid only for what was studied; it ends when reagent, instrument or tube changes.",
            ParagraphStyle.Small
        );

    public static Section Of() =>
        new(
            "Cautions",
            StartsOnNewPage: false,
            [
                new Bullets([
                    "For qualified laboratory staff. The medical director decides; this report is evidence for that decision. Local regulation, the manufacturer's instructions and the accreditor's rules prevail over it.",
                    "A conclusion holds only for what was studied: analyte, method, storage, patient group and range. \"Not significantly different\" is not \"equivalent\": a conclusion follows from an interval inside a limit, never from a missing significance.",
                    "Blood is handled under standard precautions. Study results never enter a patient's record. Not a medical device.",
                ]),
            ]
        );
}
