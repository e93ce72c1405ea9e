using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>What a sort is told of the order and asked for on the way.</summary>
internal interface IMergeOrder<T>
{
    /// <summary>Whether a later element goes before an earlier one.</summary>
    bool LaterFirst(T earlier, T later);

    /// <summary>A later element goes before these earlier ones.</summary>
    void Passed(ReadOnlySpan<T> earlier, T later);
}

/// <summary>
/// A merge sort that tells which elements pass which: each two of which the later goes first are met once. The order is a structure, so that its methods cost no call.
/// </summary>
internal static class MergeSort
{
    /// <summary>Runs of so many are put in order by insertion, which is faster for few.</summary>
    private const int Run = 8;

    /// <summary>Puts numbers in ascending order. Sorting of the library compares them by a call each in a natively compiled program.</summary>
    public static void Ascending<T>(Span<T> numbers)
        where T : struct, IComparisonOperators<T, T, bool>
    {
        var order = new Rising<T>();
        Sort(numbers, ref order);
    }

    /// <summary>Puts items in the order of their keys; those of one key stay as they were.</summary>
    public static void ByKey<T>(Span<Keyed<T>> items)
        where T : struct, IComparisonOperators<T, T, bool>
    {
        var order = new RisingKey<T>();
        Sort(items, ref order);
    }

    /// <summary>Puts the elements in order.</summary>
    public static void Sort<T, TOrder>(Span<T> sequence, ref TOrder order)
        where TOrder : struct, IMergeOrder<T>
    {
        for (var start = 0; start < sequence.Length; start += Run)
        {
            Insert(sequence[start..Math.Min(start + Run, sequence.Length)], ref order);
        }

        var rented = ArrayPool<T>.Shared.Rent(sequence.Length);
        var from = sequence;
        var to = rented.AsSpan(0, sequence.Length);
        for (var width = Run; width < sequence.Length; width *= 2)
        {
            for (var start = 0; start < sequence.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, sequence.Length);
                var end = Math.Min(middle + width, sequence.Length);
                Merge(from[start..middle], from[middle..end], to[start..end], ref order);
            }

            var sorted = to;
            to = from;
            from = sorted;
        }

        from.CopyTo(sequence);
        ArrayPool<T>.Shared.Return(rented);
    }

    /// <summary>Puts two sequences in order into one.</summary>
    private static void Merge<T, TOrder>(
        ReadOnlySpan<T> earlier,
        ReadOnlySpan<T> later,
        Span<T> to,
        ref TOrder order
    )
        where TOrder : struct, IMergeOrder<T>
    {
        var next = 0;
        if (!earlier.IsEmpty && !later.IsEmpty)
        {
            var (left, right) = (0, 0);
            var (first, second) = (earlier[0], later[0]);
            while (true)
            {
                if (order.LaterFirst(first, second))
                {
                    order.Passed(earlier[left..], second);
                    to[next++] = second;
                    if (++right == later.Length)
                    {
                        break;
                    }

                    second = later[right];
                }
                else
                {
                    to[next++] = first;
                    if (++left == earlier.Length)
                    {
                        break;
                    }

                    first = earlier[left];
                }
            }

            earlier = earlier[left..];
            later = later[right..];
        }

        earlier.CopyTo(to[next..]);
        later.CopyTo(to[(next + earlier.Length)..]);
    }

    private static void Insert<T, TOrder>(Span<T> run, ref TOrder order)
        where TOrder : struct, IMergeOrder<T>
    {
        for (var i = 1; i < run.Length; i++)
        {
            var later = run[i];
            var place = i;
            while (place > 0 && order.LaterFirst(run[place - 1], later))
            {
                run[place] = run[place - 1];
                place--;
            }

            if (place < i)
            {
                order.Passed(run[(place + 1)..(i + 1)], later);
                run[place] = later;
            }
        }
    }
}

/// <summary>Numbers from the least up; not of doubles that are no numbers.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Rising<T> : IMergeOrder<T>
    where T : struct, IComparisonOperators<T, T, bool>
{
    public bool LaterFirst(T earlier, T later) => later < earlier;

    public void Passed(ReadOnlySpan<T> earlier, T later) { }
}

/// <summary>Items from the least key up.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct RisingKey<T> : IMergeOrder<Keyed<T>>
    where T : struct, IComparisonOperators<T, T, bool>
{
    public bool LaterFirst(Keyed<T> earlier, Keyed<T> later) => later.Key < earlier.Key;

    public void Passed(ReadOnlySpan<Keyed<T>> earlier, Keyed<T> later) { }
}

/// <summary>An item with the key that orders it.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Keyed<T>(T Key, int Item);
