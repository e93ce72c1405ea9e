using System.Diagnostics;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Folders;

/// <summary>Writes files together with their line in the record of a study; two programs at once wait for each other.</summary>
internal static class RecordFile
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(20);

    /// <summary>The record of a study; empty where there is none.</summary>
    /// <param name="folder">The study folder; null for files of no study.</param>
    /// <exception cref="UsageException">The record cannot be read.</exception>
    public static ReadOnlyMemory<byte> Read(string? folder)
    {
        if (folder is null)
        {
            return default;
        }

        var path = Path.Combine(folder, StudyRecord.Name);
        if (!File.Exists(path))
        {
            return default;
        }

        using var stream = Open(path);
        var record = new byte[stream.Length];
        stream.ReadExactly(record);
        return record;
    }

    /// <summary>The record of a study folder, read only; empty where there is none.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte> In(string folder) =>
        Path.Combine(folder, StudyRecord.Name) is var path && File.Exists(path)
            ? ReadAt(path)
            : default;

    /// <summary>The record of the study in whose folder "out" or "signed" a report lies, read only; null where there is none. A report that lies elsewhere may have nothing to do with what is beside it.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte>? Above(string report) =>
        ReportFile.StudyFolder(report) is { } folder
        && Path.GetFullPath(folder) != Path.GetDirectoryName(Path.GetFullPath(report))
        && Path.Combine(folder, StudyRecord.Name) is var path
        && File.Exists(path)
            // "null" alone would become an empty record.
            ? ReadAt(path)
            : (ReadOnlyMemory<byte>?)null;

    /// <summary>A record that somebody named, read only: an inspector may not write where it lies.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte> ReadAt(string path) =>
        InputFile.Read(path, StudyLimits.RecordBytes, "record of a study");

    /// <summary>Writes files and then adds their line; when the record cannot be written, nothing is.</summary>
    /// <param name="folder">The study folder; null for files of no study, which no record names.</param>
    /// <param name="entry">What was done.</param>
    /// <param name="files">What to write.</param>
    /// <exception cref="UsageException">A file or the record cannot be written.</exception>
    public static void Write(
        string? folder,
        RecordEntry entry,
        params (string Path, ReadOnlyMemory<byte> Bytes)[] files
    )
    {
        if (folder is null)
        {
            AtomicFile.Write(files);
            return;
        }

        foreach (var (path, _) in files)
        {
            StudyLinks.RequireNone(folder, path);
        }

        RequireWritable(folder);
        AtomicFile.Write(files);
        Append(folder, entry);
    }

    /// <summary>Refuses before anything is written what could not be recorded afterwards.</summary>
    /// <exception cref="UsageException">The record cannot be written.</exception>
    private static void RequireWritable(string folder)
    {
        var path = Path.Combine(folder, StudyRecord.Name);
        StudyLinks.RequireNone(folder, path);
        if (File.Exists(path))
        {
            Open(path).Dispose();
            return;
        }

        try
        {
            var trial = Path.Combine(folder, Path.GetRandomFileName() + ".part");
            File.Create(trial, 1, FileOptions.DeleteOnClose).Dispose();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
    }

    /// <summary>Adds a line and flushes it to disk.</summary>
    /// <exception cref="UsageException">The record cannot be written.</exception>
    private static void Append(string folder, RecordEntry entry)
    {
        var path = Path.Combine(folder, StudyRecord.Name);
        using var stream = Open(path);
        var length = stream.Length;
        try
        {
            var record = new byte[length];
            stream.ReadExactly(record);
            stream.Write(StudyRecord.Next(record, entry).Span);
            stream.Flush(flushToDisk: true);
        }
        catch (IOException error)
        {
            TakeBack(stream, length);
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
    }

    /// <summary>Half a line on a full disk would break the chain for good.</summary>
    private static void TakeBack(FileStream stream, long length)
    {
        try
        {
            stream.SetLength(length);
        }
        catch (IOException)
        {
            // Nothing more can be done; the caller hears of the first error.
        }
    }

    private static FileStream Open(string path)
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                var stream = new FileStream(
                    path,
                    FileMode.OpenOrCreate,
                    FileAccess.ReadWrite,
                    FileShare.None
                );
                if (stream.CanSeek)
                {
                    return stream;
                }

                stream.Dispose();
                throw new UsageException(
                    $"{path} is no file but a pipe, socket or device. Remove it, and put the record back from a copy."
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
