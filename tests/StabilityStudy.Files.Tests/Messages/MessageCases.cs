using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.OwnTables;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>
/// Files of messages that could be read wrongly, and the query in which each ends. Their form is that of HL7 Version 2.5.1, chapters 2, 2A and 7;
/// the words of its tables 0085, 0211 and 0490 are from memory.
/// </summary>
internal static class MessageCases
{
    public const string Settings = """

        [read.results]
        tube_pattern = "{specimen}-{tube}"
        time_point_of_tube = { A = "baseline", B = "6 h", C = "8 h" }
        columns = { tube = "specimen_id", analyte = "local_code" }
        [read.results.values]
        analyte = { "APTT" = "aPTT" }
        instrument = { "77^A" = "A1" }

        """;

    private const string Header = "MSH|^~\\&|LAB|X|||20260302||ORU^R01^ORU_R01|1|P|2.5.1\r";
    private const string Patient = "PID|1||ZZPERSON^^^X||ZZPERSON^ZZPERSON\r";
    private const string Request = "OBR|1||O-1|1^Coagulation|||20260302070500|||ZZPERSON\r";
    private const string Result =
        "OBX|1|NM|14979-9^aPTT^LN^APTT^aPTT^L||31.4|s|||||F||||||||20260302074500+0100\r";
    private const string Specimen = "SPM|1|N001-A^L-1|||||||||||||||20260302070500+0100\r";
    private const string Message = Header + Patient + Request + Result + Specimen;

    public static IEnumerable<Misreading> All =>
        [
            .. OfFiles,
            .. OfSegments,
            .. OfFields,
            .. OfTimes,
            .. OfValues,
            .. OfStatus,
            .. OfSettings,
        ];

    /// <summary>A study of one message without a stop query.</summary>
    public static StudyBytes Good => File(Message);

    /// <summary>A study with a file of messages.</summary>
    public static StudyBytes File(string text, string settings = Settings) =>
        File(Encoding.UTF8.GetBytes(text), settings);

    public static StudyBytes File(byte[] bytes, string settings = Settings) =>
        DeliveredData.WithResults("results.hl7", bytes, settings);

    /// <summary>The good message with another text in one place.</summary>
    public static StudyBytes With(string from, string to, string settings = Settings)
    {
        Assert.Contains(from, Message, StringComparison.Ordinal);
        return File(Message.Replace(from, to, StringComparison.Ordinal), settings);
    }

    private static string And(string setting) =>
        Settings.Replace("[read.results]", "[read.results]\n" + setting, StringComparison.Ordinal);

    private static IEnumerable<Misreading> OfFiles =>
        [
            new("nothing", File(""), "not-messages", "holds no message"),
            new("a table", File("specimen,tube\nA,B\n"), "not-messages", "does not begin"),
            new("a patient before a message", File(Patient + Message), "not-messages", "(MSH)"),
            new("signs that are letters", With("^~\\&", "abcd"), "not-messages", "MSH-1"),
            new("a sign twice", With("^~\\&", "^^\\&"), "not-messages", "MSH-2"),
            new("another sign in one segment", With("OBX|1", "OBX^1"), "segment-out-of-place", ""),
            new("a block without an end", File("\v" + Message), "message-cut-off", "no end"),
            new(
                "a block in a block",
                File("\v" + Message + "\v" + Message + "\u001C\r"),
                "message-cut-off",
                "no end"
            ),
            new("a block in a line", With("OBX|1", "OBX|\v1"), "not-messages", "framing byte"),
            new("a number cut in two", File(Message[..^30]), "message-cut-off", "cut off"),
            new("a batch without an end", File("BHS|^~\\&\r" + Message), "message-cut-off", "BTS"),
            new("a file without an end", File("FHS|^~\\&\r" + Message), "message-cut-off", "FTS"),
            new(
                "a batch with messages missing",
                File("BHS|^~\\&\r" + Message + "BTS|3\r"),
                "message-cut-off",
                "states 3 messages, and 1 are there"
            ),
            new(
                "a file with batches missing",
                File("FHS|^~\\&\rBHS|^~\\&\r" + Message + "BTS|1\rFTS|2\r"),
                "message-cut-off",
                "2 batches"
            ),
            new(
                "UTF-16 that nobody stated",
                File([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Message)]),
                "not-utf8",
                "encoding = \"utf-16\""
            ),
            new(
                "a segment of a hundred thousand bytes",
                With("31.4", new string('3', 100_000)),
                "record-too-long",
                "65536"
            ),
            new(
                "results of another form",
                With("ORU^R01^ORU_R01", "OUL^R22"),
                "message-not-read",
                "OUL^R22"
            ),
            new("no type of the message", With("ORU^R01^ORU_R01", ""), "message-not-read", "MSH-9"),
            new(
                "a message for training",
                With("|P|2.5.1", "|T|2.5.1"),
                "message-not-read",
                "training"
            ),
            new("version 3", With("|P|2.5.1", "|P|3"), "message-not-read", "version 2"),
            new(
                "a message in parts",
                With("|P|2.5.1", "|P|2.5.1||CONT"),
                "message-cut-off",
                "MSH-14"
            ),
            new("the end elsewhere", File(Message + "DSC|7\r"), "message-cut-off", "DSC"),
            new(
                "a set of several bytes a sign",
                With("|P|2.5.1", "|P|2.5.1||||||BIG-5"),
                "message-not-read",
                "MSH-18"
            ),
        ];

    private static IEnumerable<Misreading> OfSegments =>
        [
            new(
                "a line that is no segment",
                With("OBX|1", "BX|1"),
                "segment-out-of-place",
                "no segment"
            ),
            new(
                "a line break in a text",
                With("||31.4|", "||31\r.4|"),
                "segment-out-of-place",
                "line break"
            ),
            new(
                "a result before its request",
                File(Header + Result + Request + Specimen),
                "segment-out-of-place",
                "OBX"
            ),
            new(
                "a specimen before its request",
                File(Header + Specimen + Request + Result),
                "segment-out-of-place",
                "SPM"
            ),
            new(
                "the specimen of another patient",
                File(Header + Request + Result + Patient + Specimen),
                "segment-out-of-place",
                "SPM"
            ),
            new(
                "two specimens of one request",
                File(Message + Specimen.Replace("N001-A", "N002-A", StringComparison.Ordinal)),
                "field-not-clear",
                "several specimens"
            ),
            new("no specimen", File(Header + Request + Result), "missing-value", "specimen"),
        ];

    private static IEnumerable<Misreading> OfFields =>
        [
            new("two values", With("|31.4|", "|31.4~39.4|"), "field-not-clear", "several values"),
            new(
                "a number in components",
                With("|31.4|", "|31^4|"),
                "field-not-clear",
                "components"
            ),
            new(
                "a number in subcomponents",
                With("|31.4|", "|31&4|"),
                "field-not-clear",
                "subcomponents"
            ),
            new(
                "an escape without an end",
                With("|31.4|", "|31\\.4|"),
                "field-not-clear",
                "escape"
            ),
            new("an unknown escape", With("|31.4|", "|31\\Q\\4|"), "field-not-clear", "escape"),
            new("half a byte", With("|31.4|", "|31\\X2\\4|"), "field-not-clear", "escape"),
            new(
                "bytes of no set",
                File(
                    Encoding.Latin1.GetBytes(
                        Message.Replace("|s|", "|µ|", StringComparison.Ordinal)
                    )
                ),
                "field-not-clear",
                "ASCII or UTF-8"
            ),
            new(
                "bytes beyond the stated set",
                File(
                    Message
                        .Replace("|2.5.1\r", "|2.5.1||||||ASCII\r", StringComparison.Ordinal)
                        .Replace("|s|", "|µ|", StringComparison.Ordinal)
                ),
                "field-not-clear",
                "not ASCII"
            ),
            new(
                "a flag in bytes of no set",
                File(
                    Encoding.Latin1.GetBytes(
                        Message.Replace("|s||", "|s||µ", StringComparison.Ordinal)
                    )
                ),
                "field-not-clear",
                "OBX-8"
            ),
            new("another unit", With("|s|", "|sec|"), "other-unit", "sec"),
            new("a unit in components", With("|s|", "|10^9/L|"), "other-unit", "10"),
            new(
                "an unknown instrument",
                With("||||20260302074500", "|||B7|20260302074500"),
                "unknown-reference",
                "B7"
            ),
            new("a flag that nobody declared", With("|s||", "|s||H~A"), "flag-not-declared", "H A"),
            new(
                "a tube that does not fit",
                With("N001-A", "N001A"),
                "tube-pattern-failed",
                "tube_pattern"
            ),
            new(
                "two numbers of an order",
                File(
                    Header + "ORC|RE||O-2\r" + Request + Result,
                    Settings.Replace("specimen_id", "filler_order", StringComparison.Ordinal)
                ),
                "field-not-clear",
                "two numbers"
            ),
            new("another analyte", With("^APTT^", "^PT^"), "unknown-reference", "PT"),
            new(
                "two results of one test",
                File(Message + Message.Replace("31.4", "41.4", StringComparison.Ordinal)),
                "conflicting-rows",
                "number the results in replicate"
            ),
            new(
                "a result and its correction",
                File(
                    Message
                        + Message
                            .Replace("31.4", "41.4", StringComparison.Ordinal)
                            .Replace("|F|", "|C|", StringComparison.Ordinal),
                    And("result_status = { C = \"result\" }")
                ),
                "conflicting-rows",
                "a valid first result stands"
            ),
            new("a message twice", File(Message + Message), "duplicate-row", "same content")
            {
                Severity = Severity.Attention,
            },
        ];

    private static IEnumerable<Misreading> OfTimes =>
        [
            new("a day", With("20260302074500+0100", "20260302"), "not-a-time", "no minutes"),
            new("an hour", With("20260302074500+0100", "2026030207"), "not-a-time", "no minutes"),
            new(
                "a time of another form",
                With("20260302074500+0100", "2026-03-02T07:45"),
                "not-a-time",
                "OBX-19"
            ),
            new(
                "a day that does not exist",
                With("20260302074500+0100", "202602300745"),
                "not-a-time",
                ""
            ),
            new(
                "an hour that existed twice",
                With("20260302074500+0100", "202610250230"),
                "time-exists-twice",
                ""
            ),
            new(
                "two times",
                With("20260302074500+0100", "202603020745~202603020750"),
                "field-not-clear",
                "OBX-19"
            ),
            new(
                "a name in place of a time",
                With("20260302074500+0100", "ZZPERSON"),
                "not-a-time",
                "OBX-19"
            ),
            new("no time", With("20260302074500+0100", ""), "not-time-of-test", "OBX-19"),
            new(
                "the time of collection as that of the test",
                With(
                    "F||||||||20260302074500+0100",
                    "F|||20260302070500",
                    Settings.Replace(
                        "{ tube = ",
                        "{ tested_at = \"observed_at\", tube = ",
                        StringComparison.Ordinal
                    )
                ),
                "not-time-of-test",
                "delay would be zero"
            ),
            new(
                "the offset of another zone",
                File(
                    Message
                        .Replace(
                            "||20260302||",
                            "||20260302120000-0500||",
                            StringComparison.Ordinal
                        )
                        .Replace("0745" + "00+0100", "074500", StringComparison.Ordinal)
                ),
                "field-not-clear",
                "Europe/Berlin has +01:00"
            ),
        ];

    private static IEnumerable<Misreading> OfValues =>
        [
            new("a comma", With("|31.4|", "|31,4|"), "unknown-result", "31,4"),
            new(
                "a range",
                With("NM|", "SN|").Then("|31.4|", "|^30^-^40|"),
                "not-a-result-value",
                "range"
            ),
            new(
                "at least",
                With("NM|", "SN|").Then("|31.4|", "|>=^180|"),
                "not-a-result-value",
                "comparator"
            ),
            new("a picture", With("NM|", "ED|"), "not-a-result-value", "OBX-2"),
            new("no type of the value", With("NM|", "|"), "not-a-result-value", "OBX-2"),
            new(
                "a comment",
                With("NM|", "ST|").Then("|31.4|", "|called to ZZPERSON, thanks|"),
                "not-a-result-value",
                "not repeated"
            ),
            new(
                "a comment with a number",
                With("NM|", "TX|").Then("|31.4|", "|31.4 ZZPERSON|"),
                "not-a-result-value",
                "not repeated"
            ),
            new(
                "a rejected specimen with a result",
                With("20260302070500+0100", "20260302070500+0100||||RH^hemolysis"),
                "rejected-with-result",
                "RH"
            ),
        ];

    private static IEnumerable<Misreading> OfStatus =>
        [
            .. "CDINOPRSUW".Select(status => new Misreading(
                $"status {status}",
                With("|F|", $"|{status}|"),
                "result-status-not-declared",
                $"result_status = {{ {status} = "
            )),
            new("no status", With("|F|", "||"), "result-status-not-declared", "none = "),
            new(
                "a status of the sender",
                With("|F|", "|Q|"),
                "result-status-not-declared",
                "\"Q\""
            ),
            new(
                "a result that cannot be obtained",
                With("|F|", "|X|"),
                "field-not-clear",
                "no result"
            ),
            new(
                "a deletion that is a result",
                With("|F|", "|D|", And("result_status = { D = \"result\" }")),
                "unknown-word",
                "no result"
            ),
            new(
                "a result and its deletion",
                File(
                    Message + Message.Replace("|F|", "|D|", StringComparison.Ordinal),
                    And("result_status = { D = \"no result\" }")
                ),
                "conflicting-rows",
                "other content"
            ),
            new(
                "a preliminary result that is left aside",
                File(
                    Message + Message.Replace("|F|", "|P|", StringComparison.Ordinal),
                    And("result_status = { P = \"left aside\" }")
                ),
                "rows-left-aside",
                "status \"P\""
            )
            {
                Severity = Severity.Note,
            },
        ];

    private static IEnumerable<Misreading> OfSettings =>
        [
            new(
                "settings of a table",
                File(Message, And("date_format = \"dd.MM.yyyy HH:mm\"\nheader_line = 2")),
                "setting-without-use",
                "header_line, date_format"
            ),
            new(
                "settings of messages for a table",
                DeliveredData.Plain.With(
                    StudyBytes.FactsName,
                    GoodStudy.Utf8(
                        DeliveredData.Facts(
                            "[read.results]\nresult_status = { P = \"left aside\" }\n"
                        )
                    )
                ),
                "setting-without-use",
                "result_status"
            ),
            new(
                "a column that is none",
                File(
                    Message,
                    Settings.Replace("local_code", "local_cod", StringComparison.Ordinal)
                ),
                "missing-column",
                "Did you mean \"local_code\"?"
            ),
            new(
                "no setting",
                File(Message, ""),
                "missing-column",
                "Name under columns in [read.results]"
            ),
            new(
                "other analytes",
                File(
                    Message + Message.Replace("^APTT^", "^PT^", StringComparison.Ordinal),
                    And("other_analytes = [\"PT\"]")
                ),
                "rows-left-aside",
                "other_analytes"
            )
            {
                Severity = Severity.Note,
            },
            new(
                "messages of another type",
                File(Message + "MSH|^~\\&|||||||ADT^A08|2|P|2.5\r" + Patient),
                "rows-left-aside",
                "ADT^A08"
            )
            {
                Severity = Severity.Note,
            },
        ];

    /// <summary>The same with another text in its messages.</summary>
    public static StudyBytes Then(this StudyBytes files, string from, string to)
    {
        var text = GoodStudy.Text(files, "results.hl7");
        Assert.Contains(from, text, StringComparison.Ordinal);
        return files.With(
            "results.hl7",
            GoodStudy.Utf8(text.Replace(from, to, StringComparison.Ordinal))
        );
    }
}
