namespace StabilityStudy.Cli;

/// <summary>The user asked for something that cannot be done; the message says what to do instead.</summary>
internal sealed class UsageException : Exception
{
    public UsageException(string message)
        : base(message) { }

    public UsageException(string message, Exception inner)
        : base(message, inner) { }
}
