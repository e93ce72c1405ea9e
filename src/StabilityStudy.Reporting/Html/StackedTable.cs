using System.Xml.Linq;

namespace StabilityStudy.Reporting.Html;

/// <summary>A table whose cells stand below each other on a narrow screen, each after its head. The roles keep it a table for those who hear it.</summary>
internal static class StackedTable
{
    /// <summary>Makes a table such a one.</summary>
    /// <param name="table">A table with a head.</param>
    /// <returns>The same table.</returns>
    public static XElement Of(XElement table)
    {
        table.SetAttributeValue("class", "stacked");
        ImmutableArray<string> heads =
        [
            .. table.Descendants("th").Where(IsColumnHead).Select(head => head.Value),
        ];
        foreach (var element in table.DescendantsAndSelf())
        {
            element.SetAttributeValue("role", RoleOf(element));
        }

        foreach (var row in table.Elements("tbody").Elements("tr"))
        {
            // A heading within the table stands across all columns and has no head.
            foreach (var (cell, head) in row.Elements().Zip(heads).Take(CellsOf(row)))
            {
                cell.SetAttributeValue("data-head", head);
            }
        }

        return table;
    }

    private static int CellsOf(XElement row) =>
        row.Elements().Any(cell => cell.Attribute("colspan") is not null)
            ? 0
            : row.Elements().Count();

    private static bool IsColumnHead(XElement head) => head.Attribute("scope")?.Value == "col";

    private static string? RoleOf(XElement element) =>
        element.Name.LocalName switch
        {
            "table" => "table",
            "thead" or "tbody" => "rowgroup",
            "tr" => "row",
            "th" => IsColumnHead(element) ? "columnheader" : "rowheader",
            "td" => "cell",
            _ => element.Attribute("role")?.Value,
        };
}
