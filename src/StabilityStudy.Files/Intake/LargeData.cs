namespace StabilityStudy.Files.Intake;

/// <summary>Gives memory back between two parts of the work on a large study.</summary>
public static class LargeData
{
    /// <summary>Bytes from which a collection of its own is worth its time.</summary>
    private const long Smallest = 32_000_000;

    /// <summary>Returns what is no longer needed to the system, which the collector would otherwise find out only when as much again is in use.</summary>
    /// <param name="bytes">About how many bytes are no longer needed.</param>
    public static void Release(long bytes)
    {
        if (bytes > Smallest)
        {
            GC.Collect(
                GC.MaxGeneration,
                GCCollectionMode.Aggressive,
                blocking: true,
                compacting: true
            );
        }
    }
}
