using System.Diagnostics.CodeAnalysis;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Locking;

/// <summary>The keys of protocol.lock. The program writes them, so none has an example.</summary>
internal static class LockKeys
{
    public const int MostLocks = 1000;

    public static readonly KeyTable Root = new();

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Root);
    // csharpier-ignore-end

    private static readonly KeyTable Table = new();

    /// <summary>A time with its offset.</summary>
    public static readonly ValueForm<DateTimeOffset> Moment = Written<DateTimeOffset>(
        "date and time with an offset",
        default,
        text =>
            DateTimeOffset.TryParseExact(
                text,
                LockFile.TimeFormat,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var time
            )
                ? time
                : null
    );

    // csharpier-ignore-start
    public static readonly TableKey Locks = Root.AddTables("lock", Required, Table, "the locks, the first one first", "[[lock]]");
    public static readonly Key<int> Number = Table.Add("number", Required, Whole(1, MostLocks), "number of the lock", "");
    public static readonly Key<string> ProtocolSha256 = Table.Add("protocol_sha256", Required, Text, "SHA-256 of the protocol", "");
    public static readonly Key<DateTimeOffset> At = Table.Add("at", Required, Moment, "when it was made", "");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "who made it", "");
    public static readonly Key<string?> Reason = Table.Add("reason", Optional, OptionalText, "why it was locked again", "");
    public static readonly Key<string?> LowChanceAccepted = Table.Add("low_chance_accepted", Optional, OptionalText, "why it was locked although some time points will hardly be supported", "");
    public static readonly Key<string?> Previous = Table.Add("previous", Optional, OptionalText, "SHA-256 of the statement of the lock before it", "");
    public static readonly Key<ImmutableArray<byte>> Signature = Table.Add("signature", Optional, Written<ImmutableArray<byte>>("Base64 text", [], FromBase64), "CMS signature over the statement", "");
    public static readonly Key<ImmutableArray<byte>> TimeStamp = Table.Add("time_stamp", Optional, Written<ImmutableArray<byte>>("Base64 text", [], FromBase64), "RFC 3161 time-stamp token over the statement", "");
    // csharpier-ignore-end

    private static ValueForm<T> Written<T>(string what, T absent, Func<string, T?> parse)
        where T : struct =>
        new(
            what,
            absent,
            (TomlTable table, Key key, TomlValue value, [MaybeNullWhen(false)] out T read) =>
            {
                read = absent;
                if (!Text.TryRead(table, key, value, out var text))
                {
                    return false;
                }

                if (parse(text) is not { } parsed)
                {
                    return table.Refuse(
                        key,
                        LockFileQueries.UnreadableLock,
                        text,
                        $"This is no {what}."
                    );
                }

                read = parsed;
                return true;
            }
        );

    private static ImmutableArray<byte>? FromBase64(string text)
    {
        var bytes = new byte[text.Length];
        return Convert.TryFromBase64String(text, bytes, out var length) && length > 0
            ? [.. bytes.AsSpan(0, length)]
            : null;
    }
}
