using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the IANA time zone for times that are written without an offset.</summary>
internal static class ZoneReader
{
    public static TimeZoneInfo? Read(TomlTable table, string key)
    {
        if (table.OptionalText(key) is not { } name)
        {
            return null;
        }

        if (
            HasZoneShape(name)
            && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone)
            && zone.HasIanaId
            && string.Equals(zone.Id, name, StringComparison.Ordinal)
        )
        {
            return zone;
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
