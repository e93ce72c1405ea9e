using System.Text.Json;

namespace StabilityStudy.Files.Json;

/// <summary>Looks over JSON before it is kept in memory, where each of its values takes more room than in the file.</summary>
internal static class JsonSize
{
    /// <summary>Whether it is JSON of no more bytes and values than an analysis may have.</summary>
    public static bool IsWithinBounds(ReadOnlySpan<byte> utf8)
    {
        if (utf8.Length > StudyLimits.AnalysisBytes)
        {
            return false;
        }

        var reader = new Utf8JsonReader(utf8);
        var values = 0;
        try
        {
            while (reader.Read())
            {
                if (++values > StudyLimits.AnalysisValues)
                {
                    return false;
                }
            }

            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
