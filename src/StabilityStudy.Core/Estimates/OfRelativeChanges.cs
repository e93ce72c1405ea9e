using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Estimates;

/// <summary>Methods on percent changes, which do not exist where a baseline is not above zero.</summary>
internal static class OfRelativeChanges
{
    /// <summary>The estimate of a method, or why there are no percent changes.</summary>
    public static Estimate<T> Then<T>(
        this Estimate<RelativeChanges> changes,
        Func<ImmutableArray<double>, Estimate<T>> method
    )
        where T : class =>
        changes.TryGet(out var relative) ? method(relative.Values) : changes.RefusedAs<T>();
}
