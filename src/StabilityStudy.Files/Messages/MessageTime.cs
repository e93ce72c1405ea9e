using System.Text.RegularExpressions;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// Times of messages: YYYYMMDDHHMM[SS[.SSSS]][+/-ZZZZ] (HL7 Version 2.5.1, chapter 2A, data type TS), as they would stand in a table.
/// Shorter forms exist there; a time without minutes is none here. Parts of a second are left out.
/// </summary>
/// <param name="Offset">Offset of times that state none, where MSH-7 states one: the standard gives it to the whole message.</param>
/// <param name="Zone">The zone that study.toml names; null where it names none.</param>
internal sealed partial record MessageTime(TimeSpan? Offset, TimeZoneInfo? Zone)
{
    private const int Milliseconds = 1000;

    /// <summary>The offset of a time; null when it states none or is no time.</summary>
    public static TimeSpan? OffsetOf(string text) =>
        Form().Match(text) is { Success: true } match
        && match.Groups["zone"] is { Success: true, Value: var zone }
        && StrictTime.Read($"2000-01-01T00:00{zone[..3]}:{zone[3..]}") is { Offset: { } offset }
            ? offset
            : null;

    /// <summary>The time as a table has it, without an offset where none is known; a refused cell when it is no time to the minute.</summary>
    public TableCell Read(TableCell cell, string name)
    {
        if (cell.IsEmpty || cell.Kind == CellKind.Refused)
        {
            return cell;
        }

        if (Form().Match(cell.Text) is not { Success: true } match)
        {
            return Fault(
                cell,
                cell.Text.All(char.IsAsciiDigit) && cell.Text.Length < 12
                    ? $"{name} has no minutes, so that no delay can be told from it."
                    : $"{name} is not a time of the form YYYYMMDDHHMM[SS][+/-ZZZZ]."
            );
        }

        var day = match.Groups["day"].Value;
        var clock = match.Groups["clock"].Value;
        var seconds = match.Groups["seconds"].Value;
        var local =
            $"{day[..4]}-{day[4..6]}-{day[6..]}T{clock[..2]}:{clock[2..]}"
            + (seconds.Length > 0 ? $":{seconds}" : "");
        if (match.Groups["zone"] is { Success: true, Value: var zone })
        {
            return new($"{local}{zone[..3]}:{zone[3..]}");
        }

        return Offset is { } offset ? InMessageZone(local, offset, name) : new(local);
    }

    /// <summary>Whether two times are the same to the minute, in which both are stated.</summary>
    public static bool IsSameMinute(TableCell first, TableCell second) =>
        StrictTime.Read(first.Text) is { } one
        && StrictTime.Read(second.Text) is { } other
        && ToMinute(one) == ToMinute(other)
        && (one.Offset is null || other.Offset is null || one.Offset == other.Offset);

    // An offset that the zone of study.toml does not have at that time is somebody's mistake, and an hour of delay.
    private TableCell InMessageZone(string local, TimeSpan offset, string name)
    {
        if (
            Zone is not { } zone
            || StrictTime.Read(local) is not { } time
            || zone.IsInvalidTime(time.Local)
        )
        {
            return new(Zone is null ? local + Written(offset) : local);
        }

        var isRight = zone.IsAmbiguousTime(time.Local)
            ? zone.GetAmbiguousTimeOffsets(time.Local).Contains(offset)
            : zone.GetUtcOffset(time.Local) == offset;
        return isRight
            ? new(local + Written(offset))
            : MessageText.Refused(
                $"{name}, which states no offset,",
                $"would have {Written(offset)} from the time of its message (MSH-7), and {zone.Id} has {Written(zone.GetUtcOffset(time.Local))} then",
                "Have the sender state the offset of each time, or correct time_zone in study.toml."
            );
    }

    // What has letters is no time of another form, and may be what a sender put one field too early.
    private static TableCell Fault(TableCell cell, string message) =>
        TableCell.Refusal(
            new FieldFault(
                RowQueries.NotATime,
                cell.Text.Any(char.IsLetter) ? "" : cell.Text,
                message,
                "Have the sender state the time to the minute."
            )
        );

    private static DateTime ToMinute(StrictTime time) =>
        time.Local.AddTicks(-(time.Local.Ticks % TimeSpan.TicksPerMinute));

    private static string Written(TimeSpan offset) =>
        new DateTimeOffset(2000, 1, 3, 0, 0, 0, offset).ToString(
            "zzz",
            CultureInfo.InvariantCulture
        );

    [GeneratedRegex(
        @"^(?<day>[0-9]{8})(?<clock>[0-9]{4})((?<seconds>[0-9]{2})(\.[0-9]{1,4})?)?(?<zone>[-+][0-9]{4})?$(?!\n)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Form();
}
