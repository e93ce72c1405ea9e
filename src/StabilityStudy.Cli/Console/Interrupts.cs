using System.Runtime.InteropServices;

namespace StabilityStudy.Cli.Console;

/// <summary>Interrupts of the process after the point from which they come too late.</summary>
internal static class Interrupts
{
    // A registration ends when nothing holds it.
    private static ImmutableArray<PosixSignalRegistration> s_held = [];

    /// <summary>From here on an interrupt, or the request to end, is taken and changes nothing. What is left to do must be short.</summary>
    public static void Hold()
    {
        if (s_held.IsEmpty)
        {
            s_held =
            [
                PosixSignalRegistration.Create(PosixSignal.SIGINT, Keep),
                PosixSignalRegistration.Create(PosixSignal.SIGTERM, Keep),
            ];
        }
    }

    private static void Keep(PosixSignalContext signal) => signal.Cancel = true;
}
