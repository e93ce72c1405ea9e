namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Code lengths under a limit: the shortest code by Moffat and Katajainen, "In-place calculation of minimum-redundancy
/// codes", WADS 1995, LNCS 955, 393-402 (as recalled); where it exceeds the limit, the longest codes are shortened at
/// the cost of the next shorter ones, which loses little.
/// </summary>
internal static class HuffmanLengths
{
    /// <summary>
    /// Code length of each symbol, 0 for a symbol that does not occur. At least two symbols get a code,
    /// since some readers refuse a code of one.
    /// </summary>
    /// <param name="frequencies">How often each symbol occurs; at least two symbols, at most 65536.</param>
    /// <param name="longest">Longest code allowed; 2 to that power is at least the number of symbols.</param>
    public static byte[] Compute(ReadOnlySpan<int> frequencies, int longest)
    {
        var order = SymbolsByFrequency(frequencies);
        var work = new long[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            work[i] = frequencies[order[i]];
        }

        ReplaceByDepths(work);
        var counts = new int[longest + 1];
        foreach (var depth in work)
        {
            counts[Math.Min(depth, longest)]++;
        }

        Limit(counts);
        var lengths = new byte[frequencies.Length];
        var next = 0;
        for (var length = longest; length > 0; length--)
        {
            for (var left = counts[length]; left > 0; left--)
            {
                lengths[order[next++]] = (byte)length;
            }
        }

        return lengths;
    }

    // Rarest first, equally rare ones by number: one order on every machine.
    private static int[] SymbolsByFrequency(ReadOnlySpan<int> frequencies)
    {
        var keys = new List<long>(frequencies.Length);
        for (var symbol = 0; symbol < frequencies.Length; symbol++)
        {
            if (frequencies[symbol] > 0)
            {
                keys.Add(((long)frequencies[symbol] << 16) | (uint)symbol);
            }
        }

        for (var symbol = 0; keys.Count < 2; symbol++)
        {
            if (frequencies[symbol] == 0)
            {
                keys.Add((uint)symbol);
            }
        }

        keys.Sort();
        var order = new int[keys.Count];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = (int)(keys[i] & 0xFFFF);
        }

        return order;
    }

    /// <summary>Replaces ascending weights, at least two, by the depths of their leaves.</summary>
    private static void ReplaceByDepths(long[] work)
    {
        // Weights of inner nodes, then the indices of their parents, share the array with leaves not yet used.
        var (root, leaf) = (0, 0);
        for (var next = 0; next < work.Length - 1; next++)
        {
            var first = TakeLighter(work, next, ref root, ref leaf);
            var second = TakeLighter(work, next, ref root, ref leaf);
            work[next] = first + second;
        }

        work[^2] = 0;
        for (var next = work.Length - 3; next >= 0; next--)
        {
            work[next] = work[work[next]] + 1;
        }

        var (available, depth, inner) = (1, 0L, work.Length - 2);
        for (var next = work.Length - 1; available > 0; depth++)
        {
            var used = 0;
            for (; inner >= 0 && work[inner] == depth; inner--)
            {
                used++;
            }

            for (; available > used; available--)
            {
                work[next--] = depth;
            }

            available = 2 * used;
        }
    }

    private static long TakeLighter(long[] work, int next, ref int root, ref int leaf)
    {
        if (leaf < work.Length && (root >= next || work[leaf] <= work[root]))
        {
            return work[leaf++];
        }

        var weight = work[root];
        work[root++] = next;
        return weight;
    }

    /// <summary>Makes the numbers of codes of each length those of a complete code again, after longer ones were counted as longest.</summary>
    private static void Limit(int[] counts)
    {
        var longest = counts.Length - 1;
        long total = 0;
        for (var length = 1; length <= longest; length++)
        {
            total += (long)counts[length] << (longest - length);
        }

        for (; total > 1L << longest; total--)
        {
            // One code of the longest leaves, to become the sister of a shorter one made one bit longer.
            var shorter = Array.FindLastIndex(counts, longest - 1, static count => count > 0);
            counts[longest]--;
            counts[shorter]--;
            counts[shorter + 1] += 2;
        }
    }
}
