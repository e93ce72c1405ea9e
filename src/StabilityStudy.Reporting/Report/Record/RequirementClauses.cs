using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The clauses of law and standard that a study of delay answers, named from memory.</summary>
internal static class RequirementClauses
{
    public const string Procedure = "42 CFR 493.1251";
    public const string Handling = "42 CFR 493.1242";
    public const string Keeping = "42 CFR 493.1105";
    public const string WatchedTime = "ISO 15189:2022, 7.2.7";

    /// <summary>The clauses.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="isSigned">Whether everybody has signed, so that nothing is missing for want of a signature.</param>
    public static ImmutableArray<Requirement> Of(StudyAnalysis analysis, bool isSigned = false) =>
        [
            new(
                "42 CFR 493.1253(b)(2)",
                "Performance established by the laboratory when a test is modified",
                Requirement.EachTimePoint,
                "stability only: accuracy, precision, analytical sensitivity and specificity with interfering substances, reportable range and reference intervals are not in this study"
            ),
            new(
                "42 CFR 493.1253(c)",
                "All activities of that work documented",
                RecordSection.Title,
                CompletenessItems.Lacking(analysis, 5, 9)
            ),
            new(
                Procedure,
                "A procedure, approved, signed and dated by the director before use, that says how specimens are stored, when rejected",
                DecisionSection.Title,
                "the procedure itself; it is written after the decision"
            ),
            new(
                Handling,
                "Rules for labeling, collection, storage, preservation, transport, processing and acceptability; date and time of receipt",
                ConductSection.Title,
                Requirement.Together(
                    analysis.Protocol.Draw?.Transport is null
                        ? "labeling and transport"
                        : "labeling",
                    CompletenessItems.Lacking(analysis, 7, 9)
                )
            ),
            new(
                Keeping,
                "Records of a method's performance kept as long as the test system is used, at least two years; longer where local rules say so",
                RecordSection.Title,
                "where and how long this file is kept is for the laboratory to write down"
            ),
            new(
                "42 CFR 493.1283",
                "For each result: specimen, receipt and test, condition of unacceptable ones, persons who tested",
                PairSection.Title,
                analysis.Facts.People.IsEmpty
                    ? "no person is named in the files"
                    : "persons and clock times: as far as recorded they stand in the attached specimens.csv and results.csv, not in the table"
            ),
            new(
                "ISO 15189:2022, 7.3.3",
                "Validation of a modified method: specified use, extent, criteria, record, person who authorizes",
                ProtocolSection.Title,
                Requirement.Together(
                    Requirement.NotLockedBefore(analysis),
                    Requirement.NotApprovedBefore(analysis),
                    isSigned ? null : "review and authorization, until page 1 is signed"
                )
            ),
            new(
                WatchedTime,
                "Time between collection and test specified and watched where it matters",
                DecisionSection.Title,
                "how the laboratory watches the time in daily work"
            ),
            new(
                "ISO 15189:2022, 8.4",
                "Records legible, complete, protected from change, amendments traced",
                RecordSection.Title,
                "protection: hashes show a change and do not prevent it; access and retention are the laboratory's"
            ),
            new(
                "21 CFR 11.10",
                "Electronic records: reliable, complete copies, order of steps, changes told",
                RecordSection.Title,
                "validation of this program in the laboratory; access control; the record of who ran it stays in the study folder"
            ),
            new(
                "21 CFR 11.50",
                "A signature shows printed name, date and time, and meaning",
                FirstPage.Title,
                isSigned ? null : "signatures: see the boxes there and \"verify\""
            ),
            new(
                "21 CFR 11.70",
                "Signatures tied to their record",
                RecordSection.Title,
                isSigned ? null : "the signatures, until page 1 is signed"
            ),
        ];
}
