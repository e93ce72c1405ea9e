using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Tests.Protocols;

public sealed class NamedSourceTests
{
    [Theory]
    [InlineData("SOP-12, edition 3, page 4", false)]
    [InlineData("SOP", true)]
    [InlineData("42 CFR 493.941 (from memory, look it up)", true)]
    [InlineData("Example: rule of an invented facility", true)]
    [InlineData("", false)]
    public void What_nobody_can_look_up_is_no_document(string text, bool expected) =>
        Assert.Equal(expected, new NamedSource("limit each", text).IsNoDocument);
}
