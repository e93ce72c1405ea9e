using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// Reads a file of HL7 v2 result messages (ORU^R01; HL7 Version 2.5.1, chapter 7) as lines of a table: one for each observation. Of all other
/// segments and fields than those of <see cref="MessageColumns"/> nothing becomes text.
/// </summary>
internal sealed class MessageReading(MessageSettings settings, string fileName, QueryList queries)
{
    private readonly Envelope _envelope = new(fileName, queries);
    private readonly SortedDictionary<(string By, string What), int> _leftAside = [];
    private MessageHead? _message;
    private OrderRows? _order;
    private Segment? _common;
    private string _before = "";

    /// <summary>The names of the columns, then a line for each observation.</summary>
    public IEnumerable<TableLine> Lines(ReadOnlyMemory<byte> text)
    {
        yield return new(1, [.. MessageColumns.Names.Select(name => new TableCell(name))]);
        foreach (var line in MessageLines.Of(text))
        {
            if (!Takes(line))
            {
                yield break;
            }

            foreach (var row in Take(line))
            {
                yield return row;
            }
        }

        foreach (var row in CloseOrder())
        {
            yield return row;
        }

        _envelope.Close();
        foreach (var ((by, what), count) in _leftAside)
        {
            queries.AddOwn(
                MessageQueries.RowsLeftAside,
                new QuerySource(fileName, null, null),
                "",
                by,
                what,
                count.ToString(CultureInfo.InvariantCulture)
            );
        }
    }

    /// <summary>Whether the file can be read on.</summary>
    private bool Takes(MessageLine line)
    {
        if (line.Number > StudyLimits.TableLines)
        {
            FileQueries.AddTooManyLines(queries, fileName);
            return false;
        }

        if (!MessageLines.HasFraming(line.Bytes.Span))
        {
            return true;
        }

        Add(
            MessageQueries.NotMessages,
            line.Number,
            "A framing byte of a message block stands inside the line, so that the messages cannot be told apart."
        );
        return false;
    }

    private ImmutableArray<TableLine> Take(MessageLine line)
    {
        _envelope.Frame(line);
        if (line.Bytes.IsEmpty)
        {
            return [];
        }

        var name = Segment.NameOf(line.Bytes.Span);
        var isHeader = name is "MSH" or "FHS" or "BHS";
        var signs =
            isHeader ? SegmentSigns.Of(line.Bytes.Span)
            : name is not null && Envelope.IsTrailer(name) ? _envelope.Signs ?? _message?.Signs
            : _message?.Signs ?? _envelope.Signs;
        if (name is null || signs is not { } known || !IsWhole(line, name, known))
        {
            ReportLine(line, isHeader);
            return [];
        }

        var segment = new Segment(line.Number, line.Bytes, known);
        if (IsRead(name) && !IsWithinBounds(line))
        {
            return [];
        }

        _before = name;
        _envelope.Note(name, segment);
        if (!isHeader && !Envelope.IsTrailer(name))
        {
            return Inside(name, segment);
        }

        var rows = CloseOrder();
        Head(name, segment);
        return rows;
    }

    private void Head(string name, Segment segment)
    {
        _common = null;
        _message = name == "MSH" ? MessageHead.Read(segment, settings, fileName, queries) : null;
        if (_message is { Use: MessageUse.LeftAside, Type: var type })
        {
            LeaveAside("message", type);
        }
    }

    private ImmutableArray<TableLine> Inside(string name, Segment segment)
    {
        if (_message is null)
        {
            Add(
                MessageQueries.NotMessages,
                segment.Line,
                "The segment belongs to no message: none begins before it (MSH)."
            );
            return [];
        }

        if (_message.Use != MessageUse.Read)
        {
            return [];
        }

        switch (name)
        {
            case "ORC":
                var rows = CloseOrder();
                _common = segment;
                return rows;
            case "OBR":
                var before = CloseOrder();
                _order = new OrderRows(_message, _common, segment, settings);
                _common = null;
                return before;
            case "OBX" or "SPM" when _order is null:
                Add(
                    MessageQueries.SegmentOutOfPlace,
                    segment.Line,
                    $"A segment {name} stands before any request (OBR) of its message, so that nothing says what it belongs to."
                );
                return [];
            case "OBX":
                _order!.AddResult(segment);
                return [];
            case "SPM":
                _order!.AddSpecimen(segment);
                return [];
            // What a patient's segment begins is another patient.
            case "PID":
                return CloseOrder();
            case "ADD" or "DSC":
                Add(
                    MessageQueries.MessageCutOff,
                    segment.Line,
                    $"The segment {name} says that a segment or message goes on elsewhere; messages in parts are not read."
                );
                return [];
            default:
                return [];
        }
    }

    private ImmutableArray<TableLine> CloseOrder()
    {
        if (_order is not { } order)
        {
            return [];
        }

        _order = null;
        return [.. order.Rows(status => LeaveAside("status", status))];
    }

    private void LeaveAside(string by, string what) =>
        _leftAside[(by, what)] = _leftAside.GetValueOrDefault((by, what)) + 1;

    private bool IsWhole(MessageLine line, string name, SegmentSigns signs)
    {
        var span = line.Bytes.Span;
        if (span.Length > Segment.NameLength && span[Segment.NameLength] != signs.Field)
        {
            return false;
        }

        // A last number may have been cut in two.
        if (!line.HasEnd && !line.Ends && IsRead(name))
        {
            Add(
                MessageQueries.MessageCutOff,
                line.Number,
                "The file ends inside this segment: its last field may be cut off."
            );
        }

        return true;
    }

    private bool IsWithinBounds(MessageLine line)
    {
        if (line.Bytes.Length <= StudyLimits.RowBytes)
        {
            return true;
        }

        Add(
            CsvQueries.RecordTooLong,
            line.Number,
            FormattableString.Invariant(
                $"The segment has {line.Bytes.Length} bytes; the longest that is read has {StudyLimits.RowBytes}."
            )
        );
        return false;
    }

    private void ReportLine(MessageLine line, bool isHeader) =>
        Add(
            isHeader || _before.Length == 0
                ? MessageQueries.NotMessages
                : MessageQueries.SegmentOutOfPlace,
            line.Number,
            isHeader
                    ? "The header does not state the signs that part the message (MSH-1 and MSH-2, usually |^~\\&)."
                : _before.Length == 0
                    ? "The file does not begin with a message (MSH), batch (BHS) or file header (FHS)."
                : $"The line is no segment. It follows a segment {_before}; a text with a line break in it looks so, and its rest is then lost."
        );

    private void Add(QueryKind kind, int line, string message) =>
        queries.Add(kind, new QuerySource(fileName, line, null), "", message);

    private static bool IsRead(string name) =>
        name is "MSH" or "FHS" or "BHS" or "FTS" or "BTS" or "ORC" or "OBR" or "OBX" or "SPM";
}
