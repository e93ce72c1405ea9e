using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>A column that a file of messages gives to each result, declared once: its name, and how it is read.</summary>
/// <param name="Name">The name by which study.toml calls it.</param>
/// <param name="Fields">The fields of the standard from which it comes.</param>
/// <param name="Note">What it means.</param>
/// <param name="Read">Reads it.</param>
internal sealed record MessageColumn(
    string Name,
    string Fields,
    string Note,
    Func<Observation, TableCell> Read
);

/// <summary>
/// The fields of HL7 v2 result messages that are read (HL7 Version 2.5.1, chapter 7: OBR, OBX and SPM; chapter 4: ORC), and no others: names,
/// numbers and addresses of persons stand in PID, PD1, NK1, PV1, GT1, IN1, NTE, ORC-10 to 12, OBR-10, 16, 28 and 32 to 35, OBX-16 and more.
/// </summary>
internal static class MessageColumns
{
    /// <summary>When the sender says that it was observed, which the standard means as the time of collection.</summary>
    public const string ObservedAt = "observed_at";

    /// <summary>Why the specimen was rejected.</summary>
    public const string RejectReason = "reject_reason";

    // csharpier-ignore-start
    public static readonly ImmutableArray<MessageColumn> All =
    [
        new("specimen_id", "SPM-2.1", "number of the specimen, given by who ordered", row => row.OfSpecimen(2, (text, field) => text.Identifier(field, 1, "SPM-2.1"))),
        new("laboratory_specimen_id", "SPM-2.2", "number of the specimen, given by the laboratory", row => row.OfSpecimen(2, (text, field) => text.Identifier(field, 2, "SPM-2.2"))),
        new("placer_order", "OBR-2.1, else ORC-2.1", "number of the order, given by who ordered", row => row.OfOrder(2)),
        new("filler_order", "OBR-3.1, else ORC-3.1", "number of the order, given by the laboratory", row => row.OfOrder(3)),
        new("laboratory_field_1", "OBR-20", "what the laboratory puts there; see that it names nobody", row => row.OfRequest(20)),
        new("laboratory_field_2", "OBR-21", "what the laboratory puts there; see that it names nobody", row => row.OfRequest(21)),
        new("test_code", "OBX-3.1", "code of the analyte, the first of the field", row => row.Text.Component(row.Field(3), 1, "OBX-3.1")),
        new("loinc", "OBX-3", "code of the analyte beside which LN stands", row => row.Code(isLoinc: true)),
        new("local_code", "OBX-3", "code of the analyte beside which no LN stands", row => row.Code(isLoinc: false)),
        new("sub_id", "OBX-4", "number of one of several results of a test", row => row.Text.Whole(row.Field(4), "OBX-4")),
        new("result", "OBX-5, by OBX-2, OBX-11 and SPM-21", "the result; NM, SN, ST, TX, FT, CE, CWE and CNE are read", ObservedValue.Read),
        new("unit", "OBX-6.1", "its unit", row => row.Text.Component(row.Field(6), 1, "OBX-6.1")),
        new("flag", "OBX-8", "its flags, several with a space between them", row => row.Text.Values(row.Field(8), "OBX-8")),
        new("status", "OBX-11", "its status", row => row.Status),
        new(ObservedAt, "OBX-14", "the time of observation: by the standard that of collection, with some senders that of the test", row => row.ObservedAt),
        new("instrument", "OBX-18.1", "the instrument", row => row.Text.Values(row.Field(18), "OBX-18")),
        new("tested_at", "OBX-19", "the time of analysis, from the instrument", row => row.TestedAt),
        new("collected_at", "SPM-17.1, else OBR-7", "the time of collection", row => row.CollectedAt),
        new("received_at", "SPM-18, else OBR-14", "the time of receipt in the laboratory", row => row.ReceivedAt),
        new(RejectReason, "SPM-21.1", "codes of why the specimen was rejected", row => row.RejectReason),
    ];
    // csharpier-ignore-end

    /// <summary>The names of the columns.</summary>
    public static readonly ImmutableArray<string> Names = [.. All.Select(column => column.Name)];
}
