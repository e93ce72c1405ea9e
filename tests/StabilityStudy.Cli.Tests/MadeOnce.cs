namespace StabilityStudy.Cli.Tests;

/// <summary>A folder that is dear to make: made once for all tests and never handed out, so that none can write into what another reads.</summary>
internal sealed class MadeOnce(Func<Task<StudyCopy>> make)
{
    private readonly Lazy<Task<StudyCopy>> _made = new(async () =>
        StudyCopy.UntilAllHaveRun(await make())
    );

    /// <summary>A copy for the test that asks.</summary>
    public async Task<StudyCopy> Copy() => (await _made.Value).Again();
}
