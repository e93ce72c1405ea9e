using System.Runtime.InteropServices;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Code lengths with runs shortened (RFC 1951, section 3.2.7): 16 repeats the last, 17 and 18 are zeros.</summary>
internal static class CodeLengthRuns
{
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Item(int Symbol, int ExtraBits, int Extra);

    public static List<Item> Of(ReadOnlySpan<byte> lengths)
    {
        var items = new List<Item>();
        var position = 0;
        while (position < lengths.Length)
        {
            var value = lengths[position];
            var run = 1;
            while (position + run < lengths.Length && lengths[position + run] == value)
            {
                run++;
            }

            position += run;
            if (value == 0)
            {
                AddZeros(items, run);
            }
            else
            {
                AddRepeats(items, value, run);
            }
        }

        return items;
    }

    private static void AddZeros(List<Item> items, int run)
    {
        while (run >= 11)
        {
            var taken = Math.Min(run, 138);
            items.Add(new Item(18, 7, taken - 11));
            run -= taken;
        }

        if (run >= 3)
        {
            items.Add(new Item(17, 3, run - 3));
            run = 0;
        }

        items.AddRange(Enumerable.Repeat(new Item(0, 0, 0), run));
    }

    private static void AddRepeats(List<Item> items, byte value, int run)
    {
        items.Add(new Item(value, 0, 0));
        run--;
        while (run >= 3)
        {
            var taken = Math.Min(run, 6);
            items.Add(new Item(16, 2, taken - 3));
            run -= taken;
        }

        items.AddRange(Enumerable.Repeat(new Item(value, 0, 0), run));
    }
}
