namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Whether a tube waited in the state under study. Spinning ends the time as whole blood, so a whole-blood tube is spun
/// shortly before its test. Storage as plasma begins with spinning, so such a tube is spun as soon as the baseline has
/// to be. A time that is not recorded leaves the state unknown, and then the tube does not count.
/// </summary>
internal static class StorageRules
{
    /// <summary>Why the tube did not wait in the state under study; null when it did.</summary>
    public static string? Problem(TubeRow tube, DateTimeOffset testedAt, PairContext context)
    {
        if (tube.SpunAt is not { } spunAt)
        {
            return "time of spinning not recorded, so the state in which it waited is not known";
        }

        if (spunAt < tube.CollectedAt || spunAt > testedAt)
        {
            return "spun before its collection or after its test";
        }

        return context.Storage.State switch
        {
            StorageState.WholeBlood => WholeBloodProblem(
                testedAt - spunAt,
                context.Storage.SpinToTest
            ),
            StorageState.SpunOnCells => SpunProblem(tube, spunAt, context),
            StorageState.SeparatedPlasma => SpunProblem(tube, spunAt, context)
                ?? SeparatedProblem(tube, spunAt, testedAt)
                ?? FrozenProblem(tube, testedAt, context),
        };
    }

    private static string? WholeBloodProblem(TimeSpan spinToTest, TimeSpan? allowed)
    {
        if (allowed is not { } longest)
        {
            return "the protocol does not say how long before its test whole blood may be spun";
        }

        return spinToTest > longest
            ? $"spun {DurationText.FormatToMinute(spinToTest)} before the test, {DurationText.Format(longest)} allowed: it did not wait as whole blood"
            : null;
    }

    private static string? SpunProblem(TubeRow tube, DateTimeOffset spunAt, PairContext context)
    {
        var allowed = context.Group.BaselineSpunWithin ?? context.Protocol.BaselineWithin;
        return spunAt - tube.CollectedAt > allowed
            ? $"spun {DurationText.FormatToMinute(spunAt - tube.CollectedAt)} after collection, {DurationText.Format(allowed)} allowed: until then it waited as whole blood"
            : null;
    }

    private static string? SeparatedProblem(
        TubeRow tube,
        DateTimeOffset spunAt,
        DateTimeOffset testedAt
    )
    {
        if (tube.SeparatedAt is not { } separatedAt)
        {
            return "time of taking off the plasma not recorded, so the state in which it waited is not known";
        }

        return separatedAt < spunAt || separatedAt > testedAt
            ? "plasma taken off before spinning or after the test"
            : null;
    }

    private static string? FrozenProblem(TubeRow tube, DateTimeOffset testedAt, PairContext context)
    {
        if (
            context.Storage.HighestCelsius >= 0
            && context.Protocol.TimeOrigin != TimeOrigin.Thawing
        )
        {
            return null;
        }

        return (tube.FrozenAt, tube.ThawedAt) switch
        {
            (null, _) or (_, null) =>
                "time of freezing or thawing not recorded, so the state in which it waited is not known",
            ({ } frozenAt, { } thawedAt) => frozenAt > thawedAt || thawedAt > testedAt
                ? "thawed before freezing or after the test"
                : StoodUnfrozen(frozenAt - tube.CollectedAt, testedAt - thawedAt, context),
        };
    }

    /// <summary>Plasma changes before it is frozen and after it is thawed, and that change is not one of the freezer.</summary>
    private static string? StoodUnfrozen(TimeSpan before, TimeSpan after, PairContext context) =>
        context.Protocol.Freezing is not { } rules ? null
        : before > rules.Within
            ? $"frozen {DurationText.FormatToMinute(before)} after collection, {DurationText.Format(rules.Within)} allowed"
        : after > rules.TestWithin
            ? $"tested {DurationText.FormatToMinute(after)} after thawing, {DurationText.Format(rules.TestWithin.Value)} allowed"
        : null;
}
