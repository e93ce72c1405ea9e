namespace StabilityStudy.Cli;

/// <summary>What the program's exit code says; part of the contract with scripts.</summary>
public enum ExitCode
{
    /// <summary>Done.</summary>
    Done = 0,

    /// <summary>Data queries stop the study: nothing was computed or written.</summary>
    StopQueries = 1,

    /// <summary>Wrong usage: an unknown option, a folder that does not exist, a file that cannot be written.</summary>
    WrongUsage = 2,

    /// <summary>A window is not supported, only with --require-supported; or a specimen is not to be tested (supported-windows).</summary>
    NotSupported = 3,

    /// <summary>Verification failed, or something of what the program proves about itself differs (prove).</summary>
    VerificationFailed = 4,

    /// <summary>Verification found nothing wrong but could not check everything; or the director is to be asked (supported-windows).</summary>
    VerificationIncomplete = 5,

    /// <summary>An error inside the program.</summary>
    InternalError = 70,

    /// <summary>Cancelled.</summary>
    Cancelled = 130,
}
