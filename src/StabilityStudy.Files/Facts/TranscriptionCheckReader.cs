using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads a comparison of rows with the instrument's printout.</summary>
internal static class TranscriptionCheckReader
{
    public static TranscriptionCheck Read(TomlTable table) =>
        new(
            Seed: table.Read(TranscriptionCheckKeys.Seed),
            Rows: table.Read(TranscriptionCheckKeys.Rows),
            Differences: table.Read(TranscriptionCheckKeys.Differences),
            Outcome: table.Read(TranscriptionCheckKeys.Outcome),
            By: table.Read(TranscriptionCheckKeys.By),
            On: table.Read(TranscriptionCheckKeys.On)
        );

    /// <summary>A difference that nobody followed up says that other rows may be wrong as well.</summary>
    public static void CheckDifferences(TomlTable table, TranscriptionCheck check)
    {
        if (!table.IsSound(TranscriptionCheckKeys.Differences))
        {
            return;
        }

        if (check.Differences > check.Rows && table.IsSound(TranscriptionCheckKeys.Rows))
        {
            table.Refuse(
                TranscriptionCheckKeys.Differences,
                FileQueries.OutOfRange,
                check.Differences.ToString(CultureInfo.InvariantCulture),
                "More rows differ than were compared.",
                "Correct the number of rows or of differences."
            );
        }
        else if (check.Differences > 0 && !table.Has(TranscriptionCheckKeys.Outcome))
        {
            table.Fault(
                TranscriptionCheckKeys.Differences,
                FileQueries.MissingKey,
                check.Differences.ToString(CultureInfo.InvariantCulture),
                "Rows differ from the printout, and nothing says what became of them.",
                "Say in outcome what was corrected and which other rows were compared then."
            );
        }
    }
}
