namespace StabilityStudy.Statistics.Tests;

/// <summary>Takes an estimate apart.</summary>
public static class Computed
{
    public static T Value<T>(Estimate<T> estimate)
        where T : class
    {
        Assert.True(estimate.TryGet(out var value), estimate.NotComputable?.Kind.ToString());
        return value;
    }

    public static void Refusal<T>(string code, Estimate<T> estimate)
        where T : class
    {
        Assert.Null(estimate.Value);
        Assert.Equal(code, estimate.NotComputable!.Code);
    }
}
