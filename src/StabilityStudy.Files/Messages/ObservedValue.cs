using System.Collections.Frozen;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// The value of an observation by its type (HL7 Version 2.5.1, chapter 7, OBX-2 and OBX-5; chapter 2A for the types), as a result is written
/// in a table: a number, &lt;n or &gt;n, or a word.
/// </summary>
internal static class ObservedValue
{
    private const int LongestNumber = 40;
    private const int LongestWord = 20;

    private static readonly System.Buffers.SearchValues<char> s_ofNumbers =
        System.Buffers.SearchValues.Create("0123456789.,<>=+- ");

    // Table 0490 of the standard, from memory; every other reason gives no result without more.
    private static readonly FrozenDictionary<string, string> s_missing = new Dictionary<
        string,
        string
    >
    {
        ["RC"] = "CLOT",
        ["RH"] = "HEMOLYSIS",
        ["QS"] = "QNS",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The result.</summary>
    public static TableCell Read(Observation row)
    {
        if (row.Status is { Kind: CellKind.Refused } unclear)
        {
            return unclear;
        }

        if (row.Meaning == StatusMeaning.NotDeclared)
        {
            return NotDeclared(row.Status.Text);
        }

        var reason = row.RejectReason;
        var value = IsRetracted(row) ? new("") : OfType(row);
        if (value.Kind == CellKind.Refused || reason.Kind == CellKind.Refused)
        {
            return value.Kind == CellKind.Refused ? value : reason;
        }

        if (!IsThere(value))
        {
            return value.IsEmpty && (row.Meaning == StatusMeaning.NoResult || !reason.IsEmpty)
                ? new(s_missing.GetValueOrDefault(reason.Text, "NA"))
                : value;
        }

        return row.Meaning == StatusMeaning.NoResult
                ? TableCell.Refusal(
                    new FieldFault(
                        MessageQueries.FieldNotClear,
                        value.Text,
                        $"The status \"{row.Status.Text}\" says that there is no result, and a value stands beside it."
                    )
                )
            : reason.IsEmpty || row.ReadsRejection ? value
            : TableCell.Refusal(
                new FieldFault(
                    MessageQueries.RejectedWithResult,
                    reason.Text,
                    $"The specimen was rejected (SPM-21: \"{reason.Text}\"), and there is a result of it.",
                    "Read the reason as a flag, columns = { flag = [\"flag\", \"reject_reason\"] }, and declare under values what it means for a result."
                )
            );
    }

    /// <summary>Whether a cell holds a number or limit.</summary>
    public static bool IsThere(TableCell value) => value.Text.AsSpan().ContainsAnyInRange('0', '9');

    // The value that stands beside a status that takes it back is the one that was taken back.
    private static bool IsRetracted(Observation row) =>
        row.Meaning == StatusMeaning.NoResult && row.Status.Text != ResultStatus.CannotBeObtained;

    private static TableCell NotDeclared(string status)
    {
        var words = ResultStatus.WordsOf(status);
        var named = status.Length == 0 ? ResultStatus.None : status;
        var allowed = ResultStatus.AllowedFor(status).Select(FileWords.StatusMeanings.Write);
        return TableCell.Refusal(
            new FieldFault(
                MessageQueries.StatusNotDeclared,
                status,
                status.Length == 0
                    ? "The result has no status (OBX-11), so that nobody knows whether it is final."
                    : $"The result has the status \"{status}\" (OBX-11){(words.Length > 0 ? $": {words}" : "")}.",
                $"See what the laboratory did, and write result_status = {{ {named} = {string.Join(" or ", allowed.Select(word => $"\"{word}\""))} }} under [read.results] in study.toml; where two rows give one result, take out the one that does not count, with a deviation that says why."
            )
        );
    }

    private static TableCell OfType(Observation row)
    {
        var field = row.Field(5);
        if (field.IsEmpty)
        {
            return new("");
        }

        var type = row.Text.Component(row.Field(2), 1, "OBX-2");
        return type.Text switch
        {
            "NM" => Number(row.Text.Whole(field, "OBX-5"), row.IsKnownWord),
            "SN" => Structured(row, field),
            "ST" or "TX" or "FT" => Words(row.Text.Whole(field, "OBX-5"), row.IsKnownWord),
            "CE" or "CWE" or "CNE" => Coded(row, field),
            _ when type.Kind == CellKind.Refused => type,
            _ => NotAResult(
                type.IsEmpty
                    ? "The observation does not state of which type its value is (OBX-2)."
                    : "The value is of a type that is not read (OBX-2); NM, SN, ST, TX, FT, CE, CWE and CNE are."
            ),
        };
    }

    // A number may have a plus sign there.
    private static TableCell Number(TableCell cell, Func<string, bool> isKnown) =>
        cell.Text is ['+', >= '0' and <= '9', ..]
            ? Words(new(cell.Text[1..]), isKnown)
            : Words(cell, isKnown);

    /// <summary>Comparator, number, separator, number: only a number, or one beyond a limit, is a result of a study.</summary>
    private static TableCell Structured(Observation row, ReadOnlySpan<byte> field)
    {
        var text = row.Text;
        var comparator = text.Component(field, 1, "OBX-5.1");
        var number = Number(text.Component(field, 2, "OBX-5.2"), row.IsKnownWord);
        var separator = text.Component(field, 3, "OBX-5.3");
        var second = text.Component(field, 4, "OBX-5.4");
        foreach (var part in (ReadOnlySpan<TableCell>)[comparator, number, separator, second])
        {
            if (part.Kind == CellKind.Refused)
            {
                return part;
            }
        }

        return
            !separator.IsEmpty
            || !second.IsEmpty
            || comparator.Text is not ("" or "=" or "<" or ">")
            ? NotAResult(
                "The value is a range, a ratio, or has another comparator than <, > and =; none of them is a result of a study."
            )
            : new((comparator.Text == "=" ? "" : comparator.Text) + number.Text);
    }

    private static TableCell Coded(Observation row, ReadOnlySpan<byte> field)
    {
        var words = row.Text.Component(field, 2, "OBX-5.2");
        return Words(
            words.IsEmpty ? row.Text.Component(field, 1, "OBX-5.1") : words,
            row.IsKnownWord
        );
    }

    // A text may be a comment that names persons; what does not look like a result is not repeated, unless study.toml knows the words.
    private static TableCell Words(TableCell cell, Func<string, bool> isKnown) =>
        cell.Text.Length <= LongestNumber && !cell.Text.AsSpan().ContainsAnyExcept(s_ofNumbers)
        || isKnown(cell.Text)
        || (
            cell.Text.Length <= LongestWord
            && !cell.Text.Any(char.IsWhiteSpace)
            && IdentityShape.Of(cell.Text) is null
        )
            ? cell
            : NotAResult(
                "The value is a text that is no result, and is not repeated here, as it may name persons.",
                "See the message. Where the words stand for a result or for none, say so under values of [read.results]: result = { \"their words\" = \"NA\" }. Where the observation is no result of the study, list its code in other_analytes."
            );

    private static TableCell NotAResult(string message, string? action = null) =>
        TableCell.Refusal(new FieldFault(MessageQueries.NotAResultValue, "", message, action));
}
