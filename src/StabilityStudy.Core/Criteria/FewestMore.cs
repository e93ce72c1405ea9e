namespace StabilityStudy.Core.Criteria;

/// <summary>The smallest further number of specimens with which something shown is no longer shown.</summary>
internal static class FewestMore
{
    /// <summary>By halving: what is lost with so many stays lost with more.</summary>
    /// <param name="most">The most there can be.</param>
    /// <param name="isShownWith">Whether it is still shown with so many more; true of none.</param>
    /// <returns>The number; one above <paramref name="most"/> when nothing loses it.</returns>
    public static int ThatOpen(int most, Func<int, bool> isShownWith)
    {
        var (shown, open) = (0, most + 1);
        while (open - shown > 1)
        {
            var middle = shown + ((open - shown) / 2);
            (shown, open) = isShownWith(middle) ? (middle, open) : (shown, middle);
        }

        return open;
    }
}
