using System.Xml.Linq;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Html;

/// <summary>Table 1: what follows, the evidence with what speaks against it, and the decision; on a narrow screen below each other.</summary>
internal static class HtmlDecisions
{
    public static XElement Write(DecisionTable table) =>
        new(
            "div",
            new XAttribute("class", "decisions"),
            table.Rows.Select(row => Row(table.Head, row)),
            new XElement("p", new XAttribute("class", "note"), table.Note)
        );

    private static XElement Row(EvidenceHead head, DecisionRow row)
    {
        var section = new XElement(
            "section",
            new XAttribute("class", "decision"),
            new XAttribute("aria-label", $"{row.Name}: {row.Conclusion}"),
            new XElement(
                "div",
                new XAttribute("class", "claim"),
                new XElement("p", row.Name),
                new XElement(
                    "p",
                    new XAttribute("class", "answer"),
                    HtmlGlyph.Of(row.Shape),
                    row.Conclusion
                ),
                new XElement("p", new XAttribute("class", "small"), row.Facts)
            ),
            new XElement(
                "div",
                new XAttribute("class", "why"),
                row.DecideNow is { } now
                    ? new XElement(
                        "p",
                        new XAttribute("class", "now"),
                        new XElement("strong", $"{DecisionTable.DecideNow} {now}")
                    )
                    : null,
                Evidence(head, row.Evidence),
                row.Remarks.Select(text => new XElement(
                    "p",
                    new XAttribute("class", "small"),
                    text
                )),
                row.Reservations.IsEmpty
                    ? null
                    : new XElement(
                        "ol",
                        row.Reservations.Select(item => new XElement(
                            "li",
                            item.Point.Length == 0 ? null : new XElement("strong", item.Point),
                            item.Point.Length == 0 ? item.Text : " " + item.Text
                        ))
                    )
            ),
            new XElement(
                "p",
                new XAttribute("class", "decide small"),
                $"{DecisionTable.Prompt} ____________ ({row.Hint})"
            )
        );
        SpecimenLinks.SetSubject(section, row.Subject);
        return section;
    }

    private static XElement Evidence(EvidenceHead head, ImmutableArray<EvidenceLine> lines) =>
        StackedTable.Of(
            new XElement(
                "table",
                new XElement(
                    "thead",
                    new XElement(
                        "tr",
                        new[] { head.Waited, head.Change, head.Share, head.Conclusion }.Select(
                            text => new XElement("th", new XAttribute("scope", "col"), text)
                        )
                    )
                ),
                new XElement("tbody", lines.Select(Line))
            )
        );

    private static XElement Line(EvidenceLine line) =>
        new(
            "tr",
            line.IsMuted ? new XAttribute("class", "muted") : null,
            new XElement("th", new XAttribute("scope", "row"), line.Waited),
            new XElement("td", Held(line.Change)),
            new XElement("td", Held(line.Share)),
            new XElement("td", HtmlGlyph.Of(line.Shape), line.Conclusion)
        );

    /// <summary>The text with each number and its unit on one line.</summary>
    private static string Held(string text) =>
        string.Join(' ', UnitWords.Of(text, _ => true).Select(word => word.Replace(' ', '\u00A0')));
}
