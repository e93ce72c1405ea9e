namespace StabilityStudy.Files.Csv;

/// <summary>Reads times and gives those without an offset the offset of the study's zone.</summary>
/// <param name="Zone">The zone; null when study.toml gives none.</param>
/// <param name="IsKnown">False when study.toml could not be read, so that a time without an offset is not a fault of the row.</param>
internal sealed record LocalTimes(TimeZoneInfo? Zone, bool IsKnown)
{
    public const int EarliestYear = 2000;

    /// <summary>Why a time could not be read.</summary>
    public sealed record Fault(QueryKind Kind, string Message, string? Action = null);

    /// <summary>Reads a time; either the time or the fault is given, or neither when the zone is not known.</summary>
    public (DateTimeOffset? Time, Fault? Fault) Read(ReadOnlySpan<char> text)
    {
        if (StrictTime.Read(text) is not { } time)
        {
            return (null, NotATime(text.ToString()));
        }

        if (time.Local.Year < EarliestYear)
        {
            return (
                null,
                new Fault(RowQueries.TimeTooEarly, "The time lies before the year 2000.")
            );
        }

        return time.Offset is { } offset
            ? (new DateTimeOffset(time.Local, offset), null)
            : InZone(time.Local);
    }

    private (DateTimeOffset? Time, Fault? Fault) InZone(DateTime local)
    {
        if (Zone is null)
        {
            return (
                null,
                IsKnown
                    ? new Fault(
                        RowQueries.TimeWithoutOffset,
                        "The time has no offset, and study.toml gives no time_zone."
                    )
                    : null
            );
        }

        if (Zone.IsInvalidTime(local))
        {
            return (
                null,
                new Fault(
                    RowQueries.TimeDoesNotExist,
                    $"In {Zone.Id} the clocks went forward over this time."
                )
            );
        }

        if (Zone.IsAmbiguousTime(local))
        {
            return (
                null,
                new Fault(
                    RowQueries.TimeExistsTwice,
                    $"In {Zone.Id} the clocks went back, so this time existed twice.",
                    $"Write the time with its offset: {string.Join(" or ", Zone.GetAmbiguousTimeOffsets(local).Select(offset => StrictTime.Write(new DateTimeOffset(local, offset))))}."
                )
            );
        }

        return (new DateTimeOffset(local, Zone.GetUtcOffset(local)), null);
    }

    private static Fault NotATime(string text)
    {
        var looksLikeTime = text.Contains('T', StringComparison.Ordinal);
        return new Fault(
            RowQueries.NotATime,
            $"\"{text}\" is not a date and time"
                + (looksLikeTime ? " of the calendar and clock." : "."),
            "Write 2026-02-28T14:05 or 2026-02-28T14:05:30, with an offset such as +01:00 or Z; without one only when study.toml gives time_zone."
        );
    }
}
