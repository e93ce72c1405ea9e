using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>An observation with its order and specimen, of which single fields are read.</summary>
/// <param name="Text">Makes text of parts of fields.</param>
/// <param name="Times">Reads times.</param>
/// <param name="Order">The segment ORC; null where there is none.</param>
/// <param name="Request">The segment OBR.</param>
/// <param name="Result">The segment OBX.</param>
/// <param name="Specimen">The segment SPM; null where there is none.</param>
/// <param name="HasSeveralSpecimens">Whether the request has several specimens, so that nobody knows which one is meant.</param>
/// <param name="Meaning">What becomes of its status.</param>
/// <param name="ReadsRejection">Whether study.toml reads the reject reason into a column.</param>
/// <param name="IsKnownWord">Whether study.toml or the protocol knows words as a result.</param>
internal sealed record Observation(
    MessageText Text,
    MessageTime Times,
    Segment? Order,
    Segment Request,
    Segment Result,
    Segment? Specimen,
    bool HasSeveralSpecimens,
    StatusMeaning Meaning,
    bool ReadsRejection,
    Func<string, bool> IsKnownWord
)
{
    private const string Loinc = "LN";

    /// <summary>A field of the observation.</summary>
    public ReadOnlySpan<byte> Field(int number) => Result.Field(number);

    /// <summary>The status.</summary>
    public TableCell Status => Text.Component(Field(11), 1, "OBX-11");

    /// <summary>The time of collection.</summary>
    public TableCell CollectedAt =>
        OneOf(
            "the time of collection",
            OfSpecimen(17, (text, part) => Times.Read(StartOf(text, part), "SPM-17")),
            Time(Request.Field(7), "OBR-7")
        );

    /// <summary>The time of receipt.</summary>
    public TableCell ReceivedAt =>
        OneOf(
            "the time of receipt",
            OfSpecimen(18, (text, part) => Times.Read(text.Component(part, 1, "SPM-18"), "SPM-18")),
            Time(Request.Field(14), "OBR-14")
        );

    /// <summary>The time of observation; refused where it is that of collection, which the standard means by it.</summary>
    public TableCell ObservedAt
    {
        get
        {
            var stated = Time(Field(14), "OBX-14");
            return MessageTime.IsSameMinute(stated, CollectedAt)
                ? TableCell.Refusal(
                    new FieldFault(
                        MessageQueries.NotTimeOfTest,
                        stated.Text,
                        "The time of observation (OBX-14) is the time of collection, which is what the standard means by it.",
                        "Have the sender state the time of analysis (OBX-19), and read that; every delay would be zero otherwise."
                    )
                )
                : stated;
        }
    }

    /// <summary>The time of analysis.</summary>
    public TableCell TestedAt
    {
        get
        {
            var stated = Time(Field(19), "OBX-19");
            return stated.IsEmpty && ObservedValue.IsThere(ObservedValue.Read(this))
                ? TableCell.Refusal(
                    new FieldFault(
                        MessageQueries.NotTimeOfTest,
                        "",
                        "The message states no time of analysis (OBX-19), so that nobody knows from it when the result was measured.",
                        "Have the sender state it. Where the sender documents that OBX-14 is when a tube was tested, write columns = { tested_at = \"observed_at\" }."
                    )
                )
                : stated;
        }
    }

    /// <summary>Codes of why the specimen was rejected.</summary>
    public TableCell RejectReason => OfSpecimen(21, (text, part) => text.Values(part, "SPM-21"));

    /// <summary>A field of the specimen; refused where there are several.</summary>
    public TableCell OfSpecimen(int field, ReadPart read) =>
        HasSeveralSpecimens
            ? MessageText.Refused(
                "The request",
                "has several specimens (SPM), and nothing says to which of them the result belongs",
                "Have the sender report each specimen under a request (OBR) of its own."
            )
        : Specimen is { } specimen ? read(Text, specimen.Field(field))
        : new("");

    /// <summary>A free field of the request.</summary>
    public TableCell OfRequest(int field) =>
        Text.Whole(
            Request.Field(field),
            string.Create(CultureInfo.InvariantCulture, $"OBR-{field}")
        );

    /// <summary>A number of the order, which stands in two segments.</summary>
    public TableCell OfOrder(int field)
    {
        var name = field.ToString(CultureInfo.InvariantCulture);
        var first = Text.Identifier(Request.Field(field), 1, $"OBR-{name}.1");
        var second = Order is { } order
            ? Text.Identifier(order.Field(field), 1, $"ORC-{name}.1")
            : new("");
        return first.IsEmpty ? second
            : second.IsEmpty || second == first || first.Kind == CellKind.Refused ? first
            : second.Kind == CellKind.Refused ? second
            : MessageText.Refused($"OBR-{name}", $"and ORC-{name} give two numbers of one order");
    }

    /// <summary>The LOINC code of the analyte, or the other one: the field has place for two, each with the word of its system.</summary>
    public TableCell Code(bool isLoinc)
    {
        TableCell found = new("");
        foreach (var first in (ReadOnlySpan<int>)[1, 4])
        {
            var code = Text.Component(Field(3), first, "OBX-3");
            var system = Text.Component(Field(3), first + 2, "OBX-3");
            if (code.Kind == CellKind.Refused || system.Kind == CellKind.Refused)
            {
                return code.Kind == CellKind.Refused ? code : system;
            }

            if (!code.IsEmpty && system.Text == Loinc == isLoinc)
            {
                if (!found.IsEmpty && found != code)
                {
                    return MessageText.Refused("OBX-3", "has two codes of one kind");
                }

                found = code;
            }
        }

        return found;
    }

    private TableCell Time(ReadOnlySpan<byte> field, string name) =>
        Times.Read(Text.Component(field, 1, name), name);

    // A collection over a span of time has a begin and an end.
    private static TableCell StartOf(MessageText text, ReadOnlySpan<byte> field)
    {
        var (start, end) = (
            text.Component(field, 1, "SPM-17.1"),
            text.Component(field, 2, "SPM-17.2")
        );
        return end.IsEmpty || end == start
            ? start
            : MessageText.Refused(
                "SPM-17",
                "states a span of time, and the tubes of a study are drawn at a point of time"
            );
    }

    private static TableCell OneOf(string what, TableCell first, TableCell second) =>
        first.IsEmpty ? second
        : second.IsEmpty || first.Kind == CellKind.Refused ? first
        : second.Kind == CellKind.Refused ? second
        : MessageTime.IsSameMinute(first, second) ? first
        : MessageText.Refused(
            "The message",
            $"states two times of one thing: {what} is {first.Text} in SPM and {second.Text} in OBR"
        );
}

/// <summary>Reads a part of a field.</summary>
internal delegate TableCell ReadPart(MessageText text, ReadOnlySpan<byte> field);
