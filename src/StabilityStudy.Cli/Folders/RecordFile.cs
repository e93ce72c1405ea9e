using System.Diagnostics;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Cli.Folders;

/// <summary>Adds lines to the record of a study; two programs at once wait for each other.</summary>
internal static class RecordFile
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Adds a line and flushes it to disk.</summary>
    /// <exception cref="UsageException">The record cannot be written.</exception>
    public static void Append(string folder, RecordEntry entry)
    {
        var path = Path.Combine(folder, StudyRecord.Name);
        using var stream = Open(path);
        try
        {
            var record = new byte[stream.Length];
            stream.ReadExactly(record);
            stream.Write(StudyRecord.Next(record, entry).Span);
            stream.Flush(flushToDisk: true);
        }
        catch (IOException error)
        {
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
    }

    private static FileStream Open(string path)
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                return new FileStream(
                    path,
                    FileMode.OpenOrCreate,
                    FileAccess.ReadWrite,
                    FileShare.None
                );
            }
            // Another program holds the file; anything else stays what it is for ten seconds, too.
            catch (IOException) when (waited.Elapsed < s_patience && File.Exists(path))
            {
                Thread.Sleep(s_pause);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                throw new UsageException($"{path} cannot be written: {error.Message}", error);
            }
        }
    }
}
