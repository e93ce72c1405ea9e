using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>Writes a workbook of the few parts that a spreadsheet program writes (ECMA-376), for tests.</summary>
internal sealed class WorkbookBytes
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations =
        "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Packages = "http://schemas.openxmlformats.org/package/2006/relationships";

    private readonly List<(string Name, string Xml, string State)> _sheets = [];
    private readonly List<string> _formats = [];

    /// <summary>Whether days are counted from 1904.</summary>
    public bool From1904 { get; init; }

    /// <summary>Adds a sheet.</summary>
    public WorkbookBytes Sheet(
        string name,
        IEnumerable<Row> rows,
        string extra = "",
        string state = "visible",
        string before = ""
    )
    {
        var xml = new StringBuilder(before).Append("<sheetData>");
        var number = 0;
        foreach (var row in rows)
        {
            number++;
            xml.Append(
                CultureInfo.InvariantCulture,
                $"<row r=\"{number}\"{(row.IsHidden ? " hidden=\"1\"" : "")}>"
            );
            for (var i = 0; i < row.Cells.Length; i++)
            {
                xml.Append(row.Cells[i].Xml($"{Letters(i)}{number}", FormatOf, From1904));
            }

            xml.Append("</row>");
        }

        _sheets.Add((name, xml.Append("</sheetData>").Append(extra).ToString(), state));
        return this;
    }

    /// <summary>The file.</summary>
    public byte[] ToArray()
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            Part(
                archive,
                "_rels/.rels",
                $"<Relationships xmlns=\"{Packages}\"><Relationship Id=\"r1\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            );
            Part(
                archive,
                "xl/workbook.xml",
                $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\">{(From1904 ? "<workbookPr date1904=\"1\"/>" : "")}<sheets>{string.Concat(_sheets.Select((sheet, i) => $"<sheet name=\"{SecurityElement.Escape(sheet.Name)}\" sheetId=\"{i + 1}\" state=\"{sheet.State}\" r:id=\"s{i}\"/>"))}</sheets></workbook>"
            );
            Part(
                archive,
                "xl/_rels/workbook.xml.rels",
                $"<Relationships xmlns=\"{Packages}\">{string.Concat(_sheets.Select((_, i) => $"<Relationship Id=\"s{i}\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet{i + 1}.xml\"/>"))}<Relationship Id=\"st\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/></Relationships>"
            );
            Part(
                archive,
                "xl/styles.xml",
                $"<styleSheet xmlns=\"{Main}\"><numFmts>{string.Concat(_formats.Select((format, i) => $"<numFmt numFmtId=\"{200 + i}\" formatCode=\"{SecurityElement.Escape(format)}\"/>"))}</numFmts><cellXfs><xf numFmtId=\"0\"/>{string.Concat(_formats.Select((_, i) => $"<xf numFmtId=\"{200 + i}\" applyNumberFormat=\"1\"/>"))}</cellXfs></styleSheet>"
            );
            for (var i = 0; i < _sheets.Count; i++)
            {
                Part(
                    archive,
                    $"xl/worksheets/sheet{i + 1}.xml",
                    $"<worksheet xmlns=\"{Main}\">{_sheets[i].Xml}</worksheet>"
                );
            }
        }

        return bytes.ToArray();
    }

    private int FormatOf(string format)
    {
        if (!_formats.Contains(format))
        {
            _formats.Add(format);
        }

        return _formats.IndexOf(format) + 1;
    }

    private static string Letters(int column) =>
        (column < 26 ? "" : ((char)('A' + column / 26 - 1)).ToString()) + (char)('A' + column % 26);

    private static void Part(ZipArchive archive, string name, string xml)
    {
        using var writer = new StreamWriter(archive.CreateEntry(name).Open());
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n" + xml);
    }

    /// <summary>A row.</summary>
    public sealed record Row(params Cell[] Cells)
    {
        public bool IsHidden { get; init; }

        /// <summary>A row of texts.</summary>
        public static Row Of(params string[] texts) => new([.. texts.Select(Cell.Text)]);
    }

    /// <summary>A cell.</summary>
    public sealed record Cell(string Content, string Type, string? Format)
    {
        public static Cell Text(string text) =>
            new(text, text.Length == 0 ? "" : "inlineStr", null);

        public static Cell Number(string stored, string? format = null) => new(stored, "n", format);

        public static Cell Time(DateTime time, string format = "dd.mm.yyyy hh:mm") =>
            new(time.ToOADate().ToString("R", CultureInfo.InvariantCulture), "d", format);

        public static Cell Raw(string xml) => new(xml, "raw", null);

        public string Xml(string name, Func<string, int> formatOf, bool from1904) =>
            Type switch
            {
                "" => "",
                "raw" => Content.Replace("REF", name, StringComparison.Ordinal),
                "inlineStr" =>
                    $"<c r=\"{name}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(Content)}</t></is></c>",
                _ =>
                    $"<c r=\"{name}\"{(Format is null ? "" : $" s=\"{formatOf(Format)}\"")}><v>{Value(from1904)}</v></c>",
            };

        // Days are counted from 1904 four years and a leap day later.
        private string Value(bool from1904) =>
            Type == "d" && from1904
                ? (double.Parse(Content, CultureInfo.InvariantCulture) - 1462).ToString(
                    "R",
                    CultureInfo.InvariantCulture
                )
                : Content;
    }
}
