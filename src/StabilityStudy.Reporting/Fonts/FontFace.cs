using System.Collections.Frozen;
using System.Text;
using SkiaSharp;

namespace StabilityStudy.Reporting.Fonts;

/// <summary>One of the fonts that come with the program, with the advance width of every character it can draw.</summary>
internal sealed class FontFace
{
    private readonly FrozenDictionary<int, double> _advances;

    private FontFace(string name, byte[] file, SKTypeface typeface)
    {
        Name = name;
        File = file;
        Typeface = typeface;
        _advances = ReadAdvances(typeface);
    }

    /// <summary>Name of the embedded file without its extension.</summary>
    public string Name { get; }

    /// <summary>The TrueType file.</summary>
    public byte[] File { get; }

    /// <summary>The same font for the plots.</summary>
    public SKTypeface Typeface { get; }

    /// <summary>Loads an embedded font.</summary>
    public static FontFace Load(string name)
    {
        using var stream =
            typeof(FontFace).Assembly.GetManifestResourceStream(name + ".ttf")
            ?? throw new InvalidOperationException("The embedded font is missing: " + name);
        var file = new byte[stream.Length];
        stream.ReadExactly(file);
        using var data = SKData.CreateCopy(file);
        return new FontFace(name, file, SKTypeface.FromData(data));
    }

    /// <summary>Whether the font can draw the character.</summary>
    public bool Covers(Rune character) => _advances.ContainsKey(character.Value);

    /// <summary>Width of a text in points; the fonts have no kerning, so the widths add up.</summary>
    /// <param name="text">Text of which the font covers every character.</param>
    /// <param name="size">Font size in points.</param>
    public double Width(string text, double size)
    {
        var ems = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            ems += _advances[rune.Value];
        }

        return ems * size;
    }

    private static FrozenDictionary<int, double> ReadAdvances(SKTypeface typeface)
    {
        // At a size of one em, unhinted, Skia reports the advances of the file, which are whole font units.
        using var font = new SKFont(typeface, typeface.UnitsPerEm)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
        };
        var advances = new Dictionary<int, double>();
        for (var code = 0x20; code <= 0xFFFF; code++)
        {
            if (Rune.IsValid(code) && font.GetGlyph(code) is not 0 and var glyph)
            {
                var width = font.GetGlyphWidths([glyph])[0];
                advances.Add(code, Math.Round(width) / typeface.UnitsPerEm);
            }
        }

        return advances.ToFrozenDictionary();
    }
}
