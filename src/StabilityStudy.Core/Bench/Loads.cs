namespace StabilityStudy.Core.Bench;

/// <summary>Tubes that can be tested as one load: a span lies in the time of each.</summary>
/// <param name="First">Place of its first tube among those given.</param>
/// <param name="Count">How many tubes, which follow each other.</param>
/// <param name="From">From when on all of them may be tested.</param>
/// <param name="Until">Until when.</param>
public sealed record Load(int First, int Count, DateTimeOffset From, DateTimeOffset Until);

/// <summary>Forms loads of tubes.</summary>
internal static class Loads
{
    /// <summary>The shortest span of a load of several tubes: in less nobody loads an analyzer. Our own choice.</summary>
    public static readonly TimeSpan Shortest = TimeSpan.FromMinutes(10);

    /// <summary>Takes each tube into the load before it as long as the common span is long enough, else begins another.</summary>
    /// <param name="times">When each tube may be tested, in the order in which they fall due.</param>
    public static ImmutableArray<Load> Of(
        ImmutableArray<(DateTimeOffset From, DateTimeOffset Until)> times
    )
    {
        var loads = ImmutableArray.CreateBuilder<Load>();
        for (var i = 0; i < times.Length; i++)
        {
            var (from, until) = times[i];
            if (loads.Count > 0)
            {
                var last = loads[^1];
                var common = (
                    From: from > last.From ? from : last.From,
                    Until: until < last.Until ? until : last.Until
                );
                if (common.Until - common.From >= Shortest)
                {
                    loads[^1] = new(last.First, last.Count + 1, common.From, common.Until);
                    continue;
                }
            }

            loads.Add(new(i, 1, from, until));
        }

        return loads.ToImmutable();
    }
}
