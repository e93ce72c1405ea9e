namespace StabilityStudy.Files.Messages;

/// <summary>
/// What stands around messages: framed blocks, batches and files of batches (HL7 Version 2.5.1, chapter 2, batch protocol). A begin without its
/// end, or another count than the one stated, shows that messages are missing.
/// </summary>
internal sealed class Envelope(string fileName, QueryList queries)
{
    private const int LongestCount = 9;
    private int? _blockLine;
    private Segment? _batch;
    private Segment? _file;
    private int _messagesOfBatch;
    private int _batches;
    private int _messages;

    /// <summary>The signs of the header around messages; null where there is none.</summary>
    public SegmentSigns? Signs => _batch?.Signs ?? _file?.Signs;

    /// <summary>Whether a segment ends a batch or file.</summary>
    public static bool IsTrailer(string name) => name is "BTS" or "FTS";

    /// <summary>Notes the begin and end of a framed block.</summary>
    public void Frame(MessageLine line)
    {
        if (line.Begins)
        {
            ReportBlock();
            _blockLine = line.Number;
        }

        if (line.Ends)
        {
            _blockLine = null;
        }
    }

    /// <summary>Notes a header or trailer.</summary>
    public void Note(string name, Segment segment)
    {
        switch (name)
        {
            case "MSH":
                _messages++;
                _messagesOfBatch++;
                break;
            case "BHS":
                ReportOpen(_batch, "batch (BHS)", "BTS");
                (_batch, _messagesOfBatch) = (segment, 0);
                _batches++;
                break;
            case "BTS":
                Compare(segment, _messagesOfBatch, "messages", "BTS-1");
                _batch = null;
                break;
            case "FHS":
                ReportOpen(_batch, "batch (BHS)", "BTS");
                ReportOpen(_file, "file (FHS)", "FTS");
                (_file, _batch, _batches) = (segment, null, 0);
                break;
            case "FTS":
                ReportOpen(_batch, "batch (BHS)", "BTS");
                Compare(segment, _batches, "batches", "FTS-1");
                (_file, _batch) = (null, null);
                break;
            default:
                break;
        }
    }

    /// <summary>Raises queries about what is still open at the end.</summary>
    public void Close()
    {
        ReportBlock();
        ReportOpen(_batch, "batch (BHS)", "BTS");
        ReportOpen(_file, "file (FHS)", "FTS");
        if (_messages == 0)
        {
            queries.Add(
                MessageQueries.NotMessages,
                new QuerySource(fileName, null, null),
                "",
                "The file holds no message."
            );
        }
    }

    private void ReportBlock()
    {
        if (_blockLine is { } line)
        {
            Add(line, "The message block that begins here has no end, so that it may be cut off.");
        }
    }

    private void ReportOpen(Segment? header, string what, string trailer)
    {
        if (header is not null)
        {
            Add(
                header.Line,
                $"The {what} that begins here has no end ({trailer}), so that messages may be missing."
            );
        }
    }

    private void Compare(Segment trailer, int found, string what, string field)
    {
        var stated = trailer.Field(1);
        if (
            !stated.IsEmpty
            && stated.Length <= LongestCount
            && int.TryParse(stated, NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            && count != found
        )
        {
            Add(
                trailer.Line,
                FormattableString.Invariant(
                    $"{field} states {count} {what}, and {found} are there."
                )
            );
        }
    }

    private void Add(int line, string message) =>
        queries.Add(
            MessageQueries.MessageCutOff,
            new QuerySource(fileName, line, null),
            "",
            message
        );
}
