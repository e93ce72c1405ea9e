using System.Text;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>What holds for every segment of a message, from its header MSH.</summary>
/// <param name="Signs">The signs that part it.</param>
/// <param name="Text">Makes text of parts of its fields.</param>
/// <param name="Times">Reads its times.</param>
/// <param name="Use">What becomes of it.</param>
/// <param name="Type">Its type, for a count.</param>
internal sealed record MessageHead(
    SegmentSigns Signs,
    MessageText Text,
    MessageTime Times,
    MessageUse Use,
    string Type
)
{
    private const string Results = "ORU^R01";
    private const string Production = "P";
    private const int LongestType = 3;

    // Messages whose code begins so hold observations of specimens in other forms.
    private static readonly ImmutableArray<string> WithResults = ["ORU", "OUL", "OPU"];
    private static readonly CharacterSet Ascii = new("ASCII", Encoding.ASCII);

    /// <summary>Reads the header, with a query where the message is not one that can be read.</summary>
    public static MessageHead Read(
        Segment header,
        MessageSettings settings,
        string fileName,
        QueryList queries
    )
    {
        var plain = new MessageText(header.Signs, Ascii);
        var stated = Segment.Part(header.HeaderField(18), header.Signs.Repetition, 1);
        var characters = CharacterSet.Of(plain.Whole(stated, "MSH-18").Text, settings.Encoding);
        var text = new MessageText(header.Signs, characters ?? Ascii);
        var offset = MessageTime.OffsetOf(text.Component(header.HeaderField(7), 1, "MSH-7").Text);
        var type = TypeOf(plain, header.HeaderField(9));
        var fault = Fault(plain, header, type, characters);
        if (fault is { } refused)
        {
            queries.Add(
                refused.Kind,
                new QuerySource(fileName, header.Line, null),
                refused.Observed,
                refused.Message,
                refused.Action
            );
        }

        return new(
            header.Signs,
            text,
            new MessageTime(offset, settings.Zone),
            type == Results
                ? fault is null
                    ? MessageUse.Read
                    : MessageUse.Refused
                : fault is null
                    ? MessageUse.LeftAside
                    : MessageUse.Refused,
            type
        );
    }

    private static FieldFault? Fault(
        MessageText text,
        Segment header,
        string type,
        CharacterSet? characters
    )
    {
        if (type != Results && !IsLeftAside(type))
        {
            return new(
                MessageQueries.MessageNotRead,
                type,
                type.Length == 0
                    ? "The message does not state its type (MSH-9)."
                    : $"The message has the type {type}, which holds results in another form than {Results}."
            );
        }

        if (type != Results)
        {
            return null;
        }

        var processing = text.Component(header.HeaderField(11), 1, "MSH-11").Text;
        if (processing is not ("" or Production))
        {
            return new(
                MessageQueries.MessageNotRead,
                processing,
                "The message is marked as one for training or debugging (MSH-11), not for production.",
                "Take it out of the file; where it holds true results, have the sender mark it rightly."
            );
        }

        var version = text.Component(header.HeaderField(12), 1, "MSH-12").Text;
        if (
            version.Length > 0
            && version != "2"
            && !version.StartsWith("2.", StringComparison.Ordinal)
        )
        {
            return new(
                MessageQueries.MessageNotRead,
                version,
                "The message is not of version 2 of the standard (MSH-12)."
            );
        }

        if (!header.HeaderField(14).IsEmpty)
        {
            return new(
                MessageQueries.MessageCutOff,
                "",
                "The message goes on from another one (MSH-14); messages in parts are not read."
            );
        }

        return characters is null
            ? new(
                MessageQueries.MessageNotRead,
                "",
                $"The message states a character set that is not read (MSH-18); {CharacterSet.Known} are.",
                "Have the sender write UNICODE UTF-8; save a file of UTF-16 as UTF-8, or write encoding = \"utf-16\"."
            )
            : null;
    }

    /// <summary>Whether messages of a type are counted only.</summary>
    public static bool IsLeftAside(string type) =>
        type.Split('^') is { Length: 1 or 2 } parts
        && parts.All(IsCode)
        && type != Results
        && !WithResults.Contains(parts[0]);

    // The third component repeats the first two.
    private static string TypeOf(MessageText text, ReadOnlySpan<byte> field)
    {
        var (code, trigger) = (
            text.Component(field, 1, "MSH-9").Text,
            text.Component(field, 2, "MSH-9").Text
        );
        return !IsCode(code) ? ""
            : IsCode(trigger) ? $"{code}^{trigger}"
            : code;
    }

    private static bool IsCode(string text) =>
        text.Length == LongestType
        && text.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c));
}

/// <summary>What becomes of a message.</summary>
internal enum MessageUse
{
    /// <summary>It is not read, and a query says why.</summary>
    Refused,

    /// <summary>It holds no results and is counted only.</summary>
    LeftAside,

    /// <summary>Its results are read.</summary>
    Read,
}
