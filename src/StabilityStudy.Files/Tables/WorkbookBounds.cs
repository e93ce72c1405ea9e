using System.IO.Compression;

namespace StabilityStudy.Files.Tables;

/// <summary>Looks into a workbook before it is read: how much it holds when it is unpacked, whatever it claims.</summary>
internal static class WorkbookBounds
{
    private const int MostParts = 2000;
    private const int BufferBytes = 1 << 16;

    /// <summary>What is wrong with the workbook; null when nothing is.</summary>
    /// <exception cref="InvalidDataException">The bytes are no archive.</exception>
    public static WorkbookFault? Check(ZipArchive archive)
    {
        if (archive.Entries.Count > MostParts)
        {
            return TooLarge(
                FormattableString.Invariant($"The workbook has more than {MostParts} parts.")
            );
        }

        if (archive.GetEntry(SheetScan.WorkbookPart) is null)
        {
            return new(
                FileQueries.NotAWorkbook,
                "The file is an archive without a workbook in it.",
                "Save it in the spreadsheet program as .xlsx (not .xlsb or .ods), or as CSV."
            );
        }

        var left = (long)StudyLimits.UnpackedBytes;
        var buffer = new byte[BufferBytes];
        foreach (var entry in archive.Entries)
        {
            using var stream = entry.Open();
            var sum = new Crc32();
            for (int read; (read = stream.Read(buffer, 0, buffer.Length)) > 0; )
            {
                sum.Add(buffer.AsSpan(0, read));
                left -= read;
                if (left < 0)
                {
                    return TooLarge(
                        $"Unpacked, the workbook is larger than {StudyLimits.InWords(StudyLimits.UnpackedBytes)}."
                    );
                }
            }

            if (sum.Sum != entry.Crc32)
            {
                throw new InvalidDataException("A part of the workbook is damaged.");
            }
        }

        return null;
    }

    private static WorkbookFault TooLarge(string message) =>
        new(
            FileQueries.FileTooLarge,
            message,
            "Save only the sheet with the data, or save it as CSV."
        );
}

/// <summary>What is wrong with a workbook.</summary>
/// <param name="Kind">The kind of query.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Action">What to do.</param>
internal sealed record WorkbookFault(QueryKind Kind, string Message, string Action);
