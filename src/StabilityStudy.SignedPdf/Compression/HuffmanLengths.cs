using System.Runtime.InteropServices;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Best code lengths under a limit by package-merge: Larmore and Hirschberg, "A fast algorithm for optimal
/// length-limited Huffman codes", Journal of the ACM 37 (1990) 464-473.
/// </summary>
internal static class HuffmanLengths
{
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Package(long Weight, int Symbol, int Left, int Right);

    /// <summary>
    /// Code length of each symbol, 0 for a symbol that does not occur. At least two symbols get a code,
    /// since some readers refuse a code of one.
    /// </summary>
    /// <param name="frequencies">How often each symbol occurs; at least two symbols.</param>
    /// <param name="longest">Longest code allowed; 2 to that power is at least the number of symbols.</param>
    public static byte[] Compute(ReadOnlySpan<int> frequencies, int longest)
    {
        var packages = new List<Package>();
        var leaves = Leaves(frequencies, packages);
        var list = leaves;
        for (var level = 1; level < longest; level++)
        {
            list = MergePairs(list, leaves, packages);
        }

        var lengths = new byte[frequencies.Length];
        var pending = new Stack<int>(list.Take((2 * leaves.Count) - 2));
        while (pending.TryPop(out var index))
        {
            var package = packages[index];
            if (package.Symbol >= 0)
            {
                lengths[package.Symbol]++;
            }
            else
            {
                pending.Push(package.Left);
                pending.Push(package.Right);
            }
        }

        return lengths;
    }

    private static List<int> Leaves(ReadOnlySpan<int> frequencies, List<Package> packages)
    {
        for (var symbol = 0; symbol < frequencies.Length; symbol++)
        {
            if (frequencies[symbol] > 0)
            {
                packages.Add(new Package(frequencies[symbol], symbol, -1, -1));
            }
        }

        for (var symbol = 0; packages.Count < 2; symbol++)
        {
            if (frequencies[symbol] == 0)
            {
                packages.Add(new Package(0, symbol, -1, -1));
            }
        }

        packages.Sort(static (x, y) => (x.Weight, x.Symbol).CompareTo((y.Weight, y.Symbol)));
        return [.. Enumerable.Range(0, packages.Count)];
    }

    private static List<int> MergePairs(List<int> list, List<int> leaves, List<Package> packages)
    {
        var merged = new List<int>(leaves.Count + (list.Count / 2));
        var leaf = 0;
        for (var i = 0; i + 1 < list.Count; i += 2)
        {
            var weight = packages[list[i]].Weight + packages[list[i + 1]].Weight;
            for (; leaf < leaves.Count && packages[leaves[leaf]].Weight <= weight; leaf++)
            {
                merged.Add(leaves[leaf]);
            }

            merged.Add(packages.Count);
            packages.Add(new Package(weight, -1, list[i], list[i + 1]));
        }

        merged.AddRange(leaves.Skip(leaf));
        return merged;
    }
}
