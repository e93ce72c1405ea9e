using System.IO.Compression;
using System.Xml;

namespace StabilityStudy.Files.Tables;

/// <summary>
/// Finds in the XML of a sheet what its reader takes for an empty cell: errors of formulas, and formulas whose value was
/// never stored.
/// </summary>
/// <param name="Errors">Row and column, counted from 1 and 0 → the error.</param>
/// <param name="WithoutValue">The first cell with a formula and no value; null where each has one.</param>
internal sealed record SheetScan(
    IReadOnlyDictionary<(int Row, int Column), string> Errors,
    string? WithoutValue
)
{
    /// <summary>The part that lists the sheets.</summary>
    public const string WorkbookPart = "xl/workbook.xml";

    private const string RelationsPart = "xl/_rels/workbook.xml.rels";
    private const string Relations =
        "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string StrictRelations =
        "http://purl.oclc.org/ooxml/officeDocument/relationships";
    private const int MostErrors = 100_000;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
    };

    /// <summary>Looks through a sheet.</summary>
    /// <param name="archive">The workbook.</param>
    /// <param name="place">Place of the sheet in the workbook, counted from 0.</param>
    /// <exception cref="InvalidDataException">The sheet is not there.</exception>
    /// <exception cref="XmlException">A part is not XML.</exception>
    public static SheetScan Of(ZipArchive archive, int place)
    {
        var errors = new Dictionary<(int, int), string>();
        string? withoutValue = null;
        using var stream = PartOf(archive, place).Open();
        using var xml = XmlReader.Create(stream, Settings);
        var (row, column) = (0, -1);
        var (name, isError, hasFormula, hasValue, inValue) = ("", false, false, false, false);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element)
            {
                inValue = false;
                switch (xml.LocalName)
                {
                    case "row":
                        row = int.TryParse(
                            xml.GetAttribute("r"),
                            NumberStyles.None,
                            CultureInfo.InvariantCulture,
                            out var stated
                        )
                            ? stated
                            : row + 1;
                        column = -1;
                        break;
                    case "c":
                        name = xml.GetAttribute("r") ?? "";
                        column = ColumnOf(name) ?? column + 1;
                        isError = xml.GetAttribute("t") == "e";
                        (hasFormula, hasValue) = (false, xml.IsEmptyElement);
                        break;
                    case "f":
                        hasFormula = true;
                        break;
                    case "v":
                        inValue = isError;
                        hasValue |= !xml.IsEmptyElement;
                        break;
                    case "is":
                        hasValue = true;
                        break;
                }
            }
            else if (inValue && xml.NodeType == XmlNodeType.Text)
            {
                if (errors.Count >= MostErrors)
                {
                    throw new InvalidDataException(
                        "The sheet has more errors than any that is read."
                    );
                }

                errors[(row, column)] = xml.Value;
                inValue = false;
            }
            else if (
                xml is { NodeType: XmlNodeType.EndElement, LocalName: "c" }
                && hasFormula
                && !hasValue
            )
            {
                withoutValue ??=
                    name.Length > 0
                        ? name
                        : FormattableString.Invariant($"{column + 1} of row {row}");
            }
        }

        return new(errors, withoutValue);
    }

    private static ZipArchiveEntry PartOf(ZipArchive archive, int place)
    {
        var id = Attributes(
                archive,
                WorkbookPart,
                "sheet",
                xml => xml.GetAttribute("id", Relations) ?? xml.GetAttribute("id", StrictRelations)
            )
            .ElementAtOrDefault(place);
        var target = Attributes(
                archive,
                RelationsPart,
                "Relationship",
                xml => xml.GetAttribute("Id") == id ? xml.GetAttribute("Target") : null
            )
            .FirstOrDefault(found => found is not null);
        return (
                id is null || target is null ? null
                : target.StartsWith('/') ? archive.GetEntry(target[1..])
                : archive.GetEntry("xl/" + target)
            ) ?? throw new InvalidDataException("The sheet is not in the workbook.");
    }

    private static List<string?> Attributes(
        ZipArchive archive,
        string part,
        string element,
        Func<XmlReader, string?> read
    )
    {
        using var stream = (
            archive.GetEntry(part)
            ?? throw new InvalidDataException("A part of the workbook is missing.")
        ).Open();
        using var xml = XmlReader.Create(stream, Settings);
        var found = new List<string?>();
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == element)
            {
                found.Add(read(xml));
            }
        }

        return found;
    }

    private static int? ColumnOf(string cell)
    {
        var column = 0;
        foreach (var c in cell)
        {
            if (!char.IsAsciiLetterUpper(c))
            {
                break;
            }

            column = column * 26 + (c - 'A' + 1);
            if (column > ushort.MaxValue)
            {
                return null;
            }
        }

        return column == 0 ? null : column - 1;
    }
}
