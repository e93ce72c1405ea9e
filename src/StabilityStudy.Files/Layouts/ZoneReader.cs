namespace StabilityStudy.Files.Layouts;

/// <summary>The time zone of a study.</summary>
/// <param name="Name">Its IANA name.</param>
/// <param name="Rules">Its rules; null when they are not needed, because every time has an offset.</param>
internal sealed record StudyZone(string Name, TimeZoneInfo? Rules);

/// <summary>Reads the IANA time zone for times that are written without an offset.</summary>
internal static class ZoneReader
{
    /// <summary>What is allowed, in words.</summary>
    public const string Allowed = "a name of the IANA time zone database";

    /// <summary>Reads the zone. A study whose times all have offsets can so be read where no time zone database is installed.</summary>
    public static StudyZone? Read(TomlTable table, Key<string?> key, bool needsRules)
    {
        if (table.Read(key) is not { } name)
        {
            return null;
        }

        if (!needsRules && HasZoneShape(name))
        {
            return new StudyZone(name, null);
        }

        if (
            HasZoneShape(name)
            && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone)
            && zone.HasIanaId
            && string.Equals(zone.Id, name, StringComparison.Ordinal)
        )
        {
            return new StudyZone(name, zone);
        }

        table.Fault(
            key,
            FileQueries.UnknownTimeZone,
            name,
            $"\"{name}\" is not in the IANA time zone database.",
            "Write the IANA name, such as \"Europe/Berlin\" or \"America/Chicago\"."
        );
        return null;
    }

    private static bool HasZoneShape(string name) =>
        name.All(c => char.IsAsciiLetterOrDigit(c) || c is '/' or '_' or '+' or '-')
        && char.IsAsciiLetter(name[0]);
}
