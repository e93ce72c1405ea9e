using System.Text;

namespace StabilityStudy.Files.Toml;

/// <summary>Writes a TOML file of the program's own by the keys that it is read with; what is null or empty has no line.</summary>
internal sealed class TomlWriter
{
    private readonly StringBuilder _text = new();

    /// <summary>The head of a table.</summary>
    public void Head(string head) => _text.Append(CultureInfo.InvariantCulture, $"\n{head}\n");

    /// <summary>A text.</summary>
    public void Line(Key key, string? value) =>
        Bare(key, value is null ? null : TomlLiteral.Quoted(value));

    /// <summary>Texts.</summary>
    public void List(Key key, ImmutableArray<string> values) =>
        Bare(
            key,
            values.IsEmpty ? null : $"[{string.Join(", ", values.Select(TomlLiteral.Quoted))}]"
        );

    /// <summary>A value without quotes.</summary>
    public void Bare(Key key, string? value)
    {
        if (value is not null)
        {
            _text.Append(CultureInfo.InvariantCulture, $"{key.Name} = {value}\n");
        }
    }

    /// <summary>A whole number as it is written.</summary>
    public static string? Number(int? number) => number?.ToString(CultureInfo.InvariantCulture);

    /// <summary>A day as it is written.</summary>
    public static string? Day(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The content of the file.</summary>
    public ReadOnlyMemory<byte> ToUtf8() => Encoding.UTF8.GetBytes(_text.ToString());
}
