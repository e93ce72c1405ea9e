using System.Buffers;
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
    /// <summary>Puts the elements in order.</summary>
    public static void Sort<T, TOrder>(Span<T> sequence, ref TOrder order)
        where TOrder : struct, IMergeOrder<T>
    {
        var rented = ArrayPool<T>.Shared.Rent(sequence.Length);
        var from = sequence;
        var to = rented.AsSpan(0, sequence.Length);
        for (var width = 1; width < sequence.Length; width *= 2)
        {
            for (var start = 0; start < sequence.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, sequence.Length);
                var end = Math.Min(middle + width, sequence.Length);
                var (left, right) = (start, middle);
                for (var i = start; i < end; i++)
                {
                    if (left == middle)
                    {
                        to[i] = from[right++];
                    }
                    else if (right == end || !order.LaterFirst(from[left], from[right]))
                    {
                        to[i] = from[left++];
                    }
                    else
                    {
                        order.Passed(from[left..middle], from[right]);
                        to[i] = from[right++];
                    }
                }
            }

            var sorted = to;
            to = from;
            from = sorted;
        }

        from.CopyTo(sequence);
        ArrayPool<T>.Shared.Return(rented);
    }
}

/// <summary>An item with the key that orders it.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Keyed<T>(T Key, int Item);
