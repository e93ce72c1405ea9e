using System.IO.Compression;
using System.Text;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>Archives as an attacker or a failing disk would make them.</summary>
internal static class WorkbookDamage
{
    private const string SheetPart = "xl/worksheets/sheet1.xml";

    public static byte[] OtherArchive() =>
        Archive(archive => Write(archive, "notes.txt", "nothing"));

    /// <summary>A small file that is larger than any study when it is unpacked.</summary>
    public static byte[] Growing() =>
        Archive(archive =>
        {
            Write(archive, "xl/workbook.xml", "<workbook/>");
            using var stream = archive.CreateEntry(SheetPart, CompressionLevel.Fastest).Open();
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 300; i++)
            {
                stream.Write(zeros);
            }
        });

    /// <summary>A workbook whose sheet declares entities that grow.</summary>
    public static byte[] WithDocumentType(byte[] book)
    {
        using var bytes = new MemoryStream();
        bytes.Write(book);
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Update, leaveOpen: true))
        {
            var entry = archive.GetEntry(SheetPart)!;
            string text;
            using (var reader = new StreamReader(entry.Open()))
            {
                text = reader.ReadToEnd();
            }

            entry.Delete();
            Write(
                archive,
                SheetPart,
                text.Replace(
                    "<worksheet",
                    "<!DOCTYPE worksheet [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;\">]><worksheet",
                    StringComparison.Ordinal
                )
            );
        }

        return bytes.ToArray();
    }

    private static byte[] Archive(Action<ZipArchive> fill)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            fill(archive);
        }

        return bytes.ToArray();
    }

    private static void Write(ZipArchive archive, string name, string text)
    {
        using var stream = archive.CreateEntry(name).Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
    }
}
