using System.Globalization;
using System.Text;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>
/// Writes results as HL7 v2.5.1 ORU^R01 messages (HL7 Version 2.5.1, chapter 7: structure ORU_R01, segments OBR, OBX and SPM; chapter 2: signs,
/// escapes, batches), in one of the many ways in which senders write them, from a seed. Every field in which persons stand has a mark.
/// </summary>
internal sealed class ResultMessages(int seed)
{
    /// <summary>Stands in every name, number and address of an invented person in segments of which nothing is read.</summary>
    public const string Mark = "ZZPERSON";

    /// <summary>Stands in those in segments of which other fields are read.</summary>
    public const string Beside = "QQBESIDE";

    private readonly Random _random = new(seed);
    private readonly StringBuilder _text = new();
    private string _end = "\r";
    private char[] _signs = ['|', '^', '~', '\\', '&'];

    /// <summary>A result as it is sent.</summary>
    public sealed record Sent
    {
        public required string Tube { get; init; }
        public string Order { get; init; } = "";
        public string FieldOne { get; init; } = "";
        public string FieldTwo { get; init; } = "";
        public required string Code { get; init; }
        public required string Result { get; init; }
        public string Unit { get; init; } = "";
        public string Flag { get; init; } = "";
        public string Status { get; init; } = "F";
        public string Replicate { get; init; } = "";
        public string Instrument { get; init; } = "";
        public DateTimeOffset? Tested { get; init; }
        public DateTimeOffset? Collected { get; init; }
        public DateTimeOffset? Received { get; init; }
        public string Rejected { get; init; } = "";
    }

    /// <summary>A file of messages.</summary>
    public byte[] File(IEnumerable<Sent> results)
    {
        _end = _random.Next(3) switch
        {
            0 => "\r",
            1 => "\n",
            _ => "\r\n",
        };
        var isFramed = _random.Next(2) == 0;
        var isBatch = !isFramed && _random.Next(2) == 0;
        var messages = Groups(results);
        if (isBatch)
        {
            _signs = ['|', '^', '~', '\\', '&'];
            Segment("FHS", "^~\\&", Person());
            Segment("BHS", "^~\\&", Person());
        }

        foreach (var message in messages)
        {
            _text.Append(isFramed ? "\v" : "");
            Message(message);
            _text.Append(isFramed ? "\u001C" + _end : "");
        }

        if (isBatch)
        {
            _signs = ['|', '^', '~', '\\', '&'];
            Segment("BTS", messages.Count.ToString(CultureInfo.InvariantCulture), Person());
            Segment("FTS", "1");
        }

        return Encoding.UTF8.GetBytes(_text.ToString());
    }

    private List<List<Sent>> Groups(IEnumerable<Sent> results)
    {
        var messages = new List<List<Sent>>();
        foreach (var result in results)
        {
            if (messages.Count == 0 || _random.Next(3) > 0)
            {
                messages.Add([]);
            }

            messages[^1].Add(result);
        }

        return messages;
    }

    private void Message(List<Sent> results)
    {
        _signs = _random.Next(3) == 0 ? ['$', '!', '%', '@', '?'] : ['|', '^', '~', '\\', '&'];
        var signs = new string(_signs[1..]);
        Segment(
            "MSH",
            signs,
            "LAB",
            "INVENTED",
            "",
            Person(),
            Time(results[0].Tested ?? DateTimeOffset.UnixEpoch),
            "",
            Join("ORU", "R01", "ORU_R01"),
            Text($"M{_random.Next(100_000)}"),
            "P",
            "2.5.1",
            "",
            "",
            "",
            "",
            "",
            "UNICODE UTF-8"
        );
        Unread("SFT", 4);
        Unread("PID", 30);
        Unread("PD1", 12);
        Unread("NTE", 4);
        Unread("NK1", 30);
        Unread("PV1", 40);
        Unread("PV2", 20);

        // Results of one tube can stand under one request.
        for (var i = 0; i < results.Count; )
        {
            var first = results[i];
            var count = 1;
            while (
                i + count < results.Count
                && IsUnder(first, results[i + count])
                && _random.Next(2) == 0
            )
            {
                count++;
            }

            Request(results.GetRange(i, count));
            i += count;
        }

        Unread("ZPE", 5);
    }

    private static bool IsUnder(Sent first, Sent other) =>
        (first.Tube, first.Order, first.FieldOne, first.FieldTwo, first.Rejected, first.Collected)
        == (
            other.Tube,
            other.Order,
            other.FieldOne,
            other.FieldTwo,
            other.Rejected,
            other.Collected
        );

    private void Request(List<Sent> results)
    {
        var first = results[0];
        var inSpecimen = _random.Next(3);
        var order = Join(Text(first.Order), "LAB");
        if (_random.Next(2) == 0)
        {
            Fields(
                "ORC",
                12,
                (1, "RE"),
                (3, order),
                (10, Person()),
                (11, Person()),
                (12, Person())
            );
        }

        Fields(
            "OBR",
            35,
            (1, "1"),
            (3, order),
            (4, Join("1", "Coagulation", "L")),
            (7, inSpecimen == 0 ? "" : Time(first.Collected)),
            (10, Person()),
            (13, Person()),
            (14, inSpecimen == 0 ? "" : Time(first.Received)),
            (16, Person()),
            (17, Person()),
            (20, Text(first.FieldOne)),
            (21, Text(first.FieldTwo)),
            (28, Person()),
            (32, Person()),
            (33, Person()),
            (34, Person()),
            (35, Person())
        );
        Unread("NTE", 4);
        Unread("CTD", 7);
        for (var i = 0; i < results.Count; i++)
        {
            Result(results[i], i + 1);
            Unread("NTE", 4);
        }

        Fields(
            "SPM",
            21,
            (1, "1"),
            (2, Join(Text(first.Tube) + _signs[4] + "LAB", Text("L" + first.Tube))),
            (4, Join("CITP", "", "L")),
            (14, Person()),
            (17, inSpecimen == 1 ? "" : Time(first.Collected)),
            (18, inSpecimen == 1 ? "" : Time(first.Received)),
            (21, Text(first.Rejected))
        );
    }

    private void Result(Sent sent, int number)
    {
        var (type, value) = Value(sent.Result);
        Fields(
            "OBX",
            25,
            (1, number.ToString(CultureInfo.InvariantCulture)),
            (2, type),
            (3, Join(Text(sent.Code), Text("of the laboratory"), "L")),
            (4, Text(sent.Replicate)),
            (5, value),
            (6, sent.Unit.Length > 0 ? Join(Text(sent.Unit), "", "UCUM") : ""),
            (8, Text(sent.Flag)),
            (11, sent.Status),
            (14, Time(sent.Collected)),
            (15, Person()),
            (16, Person()),
            (18, sent.Instrument.Length > 0 ? Join(Text(sent.Instrument), "MAKER") : ""),
            (19, Time(sent.Tested)),
            (23, Person()),
            (24, Person()),
            (25, Person())
        );
    }

    private (string Type, string Value) Value(string result)
    {
        if (result.Length == 0)
        {
            return ("", "");
        }

        if (result[0] is '<' or '>')
        {
            return _random.Next(2) == 0
                ? ("SN", Join(result[..1], result[1..]))
                : ("ST", Text(result));
        }

        return !char.IsAsciiDigit(result[0])
            ? _random.Next(2) == 0
                ? ("ST", Text(result))
                : ("CWE", Join("1", Text(result), "L"))
            : _random.Next(3) switch
            {
                0 => ("NM", result),
                1 => ("SN", Join("", result)),
                _ => ("ST", Text(result)),
            };
    }

    private string Time(DateTimeOffset? time) =>
        time is { } known
            ? known.ToString(
                known.Second == 0 && _random.Next(2) == 0 ? "yyyyMMddHHmm"
                    : _random.Next(2) == 0 ? "yyyyMMddHHmmss"
                    : "yyyyMMddHHmmss.ffff",
                CultureInfo.InvariantCulture
            )
                + known
                    .ToString("zzz", CultureInfo.InvariantCulture)
                    .Replace(":", "", StringComparison.Ordinal)
            : "";

    // Letters of a text are sometimes written as escapes; the signs always are.
    private string Text(string text)
    {
        var written = new StringBuilder();
        foreach (var sign in text)
        {
            var place = Array.IndexOf(_signs, sign);
            written.Append(
                place >= 0 ? $"{_signs[3]}{"FSRET"[place]}{_signs[3]}"
                : sign < 0x7F && _random.Next(40) == 0 ? $"{_signs[3]}X{(int)sign:X2}{_signs[3]}"
                : sign.ToString()
            );
        }

        return written.ToString();
    }

    private string Join(params string[] parts) => string.Join(_signs[1], parts);

    private string Person(string mark = Beside) =>
        Join(
            $"{mark}{_random.Next(10_000)}",
            $"{mark}Müller",
            $"{mark}{_signs[4]}{mark}",
            $"{mark}19480203"
        );

    private void Unread(string name, int fields)
    {
        if (_random.Next(2) == 0)
        {
            Segment(
                name,
                [
                    .. Enumerable
                        .Range(0, _random.Next(1, fields))
                        .Select(_ =>
                            _random.Next(3) == 0 ? "" : Person(Mark) + _signs[2] + Person(Mark)
                        ),
                ]
            );
        }
    }

    private void Fields(
        string name,
        int most,
        params ReadOnlySpan<(int Number, string Text)> fields
    )
    {
        var all = new string[most];
        Array.Fill(all, "");
        foreach (var (number, text) in fields)
        {
            all[number - 1] = text;
        }

        Segment(name, all);
    }

    private void Segment(string name, params IEnumerable<string> fields) =>
        _text.Append(name).Append(_signs[0]).AppendJoin(_signs[0], fields).Append(_end);
}
