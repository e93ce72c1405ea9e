namespace StabilityStudy.Statistics.Tests;

public sealed class EstimateTests
{
    [Fact]
    public void Both_or_neither_of_value_and_reason_throw()
    {
        Assert.Throws<ArgumentException>(() => new Estimate<string>(null, null, []));
        Assert.Throws<ArgumentException>(() =>
            new Estimate<string>("value", new NotComputable(Refusal.SameValues), [])
        );
    }

    [Fact]
    public void A_refusal_has_its_code_and_no_value()
    {
        var estimate = Estimate.Refused<string>(Refusal.SameValues);

        Assert.False(estimate.TryGet(out _));
        Assert.Equal(new NotComputable(Refusal.SameValues), estimate.NotComputable);
        Assert.Equal("zero-spread", estimate.NotComputable?.Code);
        Assert.Empty(estimate.Notes);
    }

    [Fact]
    public void A_value_keeps_its_remarks()
    {
        var estimate = Estimate.Of("value", EstimateNote.HeavyTies);

        Assert.True(estimate.TryGet(out var value));
        Assert.Equal(("value", EstimateNote.HeavyTies), (value, Assert.Single(estimate.Notes)));
    }

    [Fact]
    public void Remarks_that_were_never_set_are_none() =>
        Assert.Empty(new Estimate<string>("value", null, default).Notes);
}
