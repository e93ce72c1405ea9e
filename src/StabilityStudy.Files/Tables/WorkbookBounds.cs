using System.IO.Compression;
using System.Xml;

namespace StabilityStudy.Files.Tables;

/// <summary>
/// Looks into a workbook before it is read: how much it holds when it is unpacked, whatever it claims, and whether each
/// formula has a value. A formula without one would be read as an empty cell.
/// </summary>
internal static class WorkbookBounds
{
    private const int MostParts = 2000;
    private const int BufferBytes = 1 << 16;

    /// <summary>What is wrong with the workbook; null when nothing is.</summary>
    /// <exception cref="InvalidDataException">The bytes are no archive.</exception>
    /// <exception cref="XmlException">A sheet is not XML.</exception>
    public static WorkbookFault? Check(byte[] bytes)
    {
        using var archive = new ZipArchive(new MemoryStream(bytes, writable: false));
        if (archive.Entries.Count > MostParts)
        {
            return TooLarge(
                FormattableString.Invariant($"The workbook has more than {MostParts} parts.")
            );
        }

        if (archive.GetEntry("xl/workbook.xml") is null)
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
            for (int read; (read = stream.Read(buffer, 0, buffer.Length)) > 0; )
            {
                left -= read;
                if (left < 0)
                {
                    return TooLarge(
                        $"Unpacked, the workbook is larger than {StudyLimits.InWords(StudyLimits.UnpackedBytes)}."
                    );
                }
            }
        }

        return archive
            .Entries.Where(entry =>
                entry.FullName.StartsWith("xl/worksheets/", StringComparison.OrdinalIgnoreCase)
                && entry.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase)
            )
            .Select(CheckSheet)
            .FirstOrDefault(fault => fault is not null);
    }

    private static WorkbookFault? CheckSheet(ZipArchiveEntry entry)
    {
        using var stream = entry.Open();
        using var xml = XmlReader.Create(
            stream,
            new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null }
        );
        var (cell, hasFormula, hasValue) = ("", false, false);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element)
            {
                switch (xml.LocalName)
                {
                    case "c":
                        (cell, hasFormula, hasValue) = (
                            xml.GetAttribute("r") ?? "",
                            false,
                            xml.IsEmptyElement
                        );
                        break;
                    case "f":
                        hasFormula = true;
                        break;
                    case "v" or "is":
                        hasValue |= !xml.IsEmptyElement;
                        break;
                }
            }
            else if (xml is { NodeType: XmlNodeType.EndElement, LocalName: "c" })
            {
                if (hasFormula && !hasValue)
                {
                    return new(
                        FileQueries.FormulaWithoutValue,
                        $"The formula in cell {cell} ({entry.Name}) has no stored value, so that the cell would be read as empty.",
                        "Open the workbook in a spreadsheet program, let it calculate, and save it again."
                    );
                }
            }
        }

        return null;
    }

    private static WorkbookFault TooLarge(string message) =>
        new(FileQueries.FileTooLarge, message, "Save only the sheet with the data, or save it as CSV.");
}

/// <summary>What is wrong with a workbook.</summary>
/// <param name="Kind">The kind of query.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Action">What to do.</param>
internal sealed record WorkbookFault(QueryKind Kind, string Message, string Action);
