using System.Runtime.InteropServices;
using System.Text;

namespace StabilityStudy.Files.Tables;

/// <summary>
/// What the number format of a cell makes of a stored number (ECMA-376, part 1, 18.8.31). Only formats that show the digits of the
/// number and nothing else are understood: a format can also put a sign or a word before a number, scale it, or hide it.
/// </summary>
/// <param name="LeastWhole">Digits that are shown at least before the point.</param>
/// <param name="LeastDecimals">Decimals that are always shown.</param>
/// <param name="MostDecimals">Decimals to which the number is rounded; null where it is shown as it is.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct NumberFormat(int LeastWhole, int LeastDecimals, int? MostDecimals)
{
    private const int MostShown = 15;

    /// <summary>The format of a cell; null when it shows anything but digits.</summary>
    public static NumberFormat? Of(string? format, double number)
    {
        if (
            string.IsNullOrEmpty(format)
            || format.Equals("General", StringComparison.OrdinalIgnoreCase)
            || format == "@"
        )
        {
            return new NumberFormat(0, 0, null);
        }

        var sections = format.Split(';');
        var section =
            sections.Length == 1 ? sections[0]
            : number < 0 ? sections[1].TrimStart('-')
            : number == 0 && sections.Length > 2 ? sections[2]
            : sections[0];
        return
            sections.Length <= 4 && !(number < 0 && sections.Length > 1 && !HasMinus(sections[1]))
            ? OfDigits(section)
            : null;
    }

    /// <summary>The number as it is stored: fifteen digits are all that a spreadsheet keeps.</summary>
    public static string? Stored(double number)
    {
        if (!double.IsFinite(number))
        {
            return null;
        }

        var digits = number.ToString("G15", CultureInfo.InvariantCulture);
        return
            decimal.TryParse(
                digits,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var plain
            ) && (plain != 0 || number == 0)
            ? plain.ToString(CultureInfo.InvariantCulture)
            : digits;
    }

    /// <summary>The number as the cell shows it.</summary>
    public string Shown(string stored)
    {
        if (
            !decimal.TryParse(
                stored,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var number
            )
        )
        {
            return stored;
        }

        var rounded = MostDecimals is { } most
            ? Math.Round(number, most, MidpointRounding.AwayFromZero)
            : number;
        var form = new StringBuilder()
            .Append('0', Math.Max(1, LeastWhole))
            .Append('.')
            .Append('0', LeastDecimals)
            .Append('#', Math.Max(0, (MostDecimals ?? MostShown) - LeastDecimals))
            .ToString();
        return rounded.ToString(form.TrimEnd('.'), CultureInfo.InvariantCulture);
    }

    private static bool HasMinus(string section) => section.Contains('-', StringComparison.Ordinal);

    private static NumberFormat? OfDigits(string section)
    {
        var digits = new StringBuilder();
        for (var i = 0; i < section.Length; i++)
        {
            switch (section[i])
            {
                // Room for a sign, as wide as the next one.
                case '_':
                    i++;
                    break;
                case '\\' when i + 1 < section.Length && section[i + 1] == ' ':
                    i++;
                    break;
                case ' ':
                    break;
                case '0' or '#' or '?' or '.' or ',':
                    digits.Append(section[i]);
                    break;
                default:
                    return null;
            }
        }

        var form = digits.ToString();
        var point = form.IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? form : form[..point];
        var decimals = point < 0 ? "" : form[(point + 1)..];

        // A comma after the last digit divides by a thousand.
        return
            whole.Length == 0
            || whole.EndsWith(',')
            || decimals.Contains(',', StringComparison.Ordinal)
            || decimals.Contains('.', StringComparison.Ordinal)
            || !whole.Contains('0', StringComparison.Ordinal)
            || decimals.Length > MostShown
            ? null
            : new NumberFormat(
                whole.Count(c => c == '0'),
                decimals.Count(c => c == '0'),
                decimals.Length
            );
    }
}
