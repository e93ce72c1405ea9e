using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Files.Toml;

/// <summary>Reads a value of a key, or one item of its list.</summary>
/// <returns>False after a query.</returns>
internal delegate bool ReadValue<T>(
    TomlTable table,
    Key key,
    TomlValue value,
    [MaybeNullWhen(false)] out T read
);

/// <summary>How a value is written.</summary>
/// <param name="Allowed">What is allowed, in words: "a whole number from 0 to 6".</param>
/// <param name="Absent">The value where none is given, or none that can be read.</param>
/// <param name="TryRead">Reads a value.</param>
internal sealed record ValueForm<T>(string Allowed, T Absent, ReadValue<T> TryRead)
{
    /// <summary>The same with another value where none is given.</summary>
    public ValueForm<T> Or(T absent) => this with { Absent = absent };

    /// <summary>The same with a further rule.</summary>
    /// <param name="allowed">The rule in words.</param>
    /// <param name="holds">Whether a value keeps the rule; raises a query when it does not.</param>
    public ValueForm<T> When(string allowed, Func<TomlTable, Key, T, bool> holds) =>
        new(
            allowed,
            Absent,
            (TomlTable table, Key key, TomlValue value, [MaybeNullWhen(false)] out T read) =>
                TryRead(table, key, value, out read) && holds(table, key, read)
        );

    /// <summary>The same with the value as something else.</summary>
    public ValueForm<TOther> As<TOther>(TOther absent, Func<T, TOther> convert) =>
        new(
            Allowed,
            absent,
            (TomlTable table, Key key, TomlValue value, [MaybeNullWhen(false)] out TOther read) =>
            {
                var isRead = TryRead(table, key, value, out var found);
                read = isRead ? convert(found!) : default;
                return isRead;
            }
        );
}
