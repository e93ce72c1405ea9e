namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class SetClock : TimeProvider
{
    public DateTimeOffset Now { get; set; }

    public override DateTimeOffset GetUtcNow() => Now.ToUniversalTime();
}
