using System.Xml.Linq;

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

    private static XElement Row(EvidenceHead head, DecisionRow row) =>
        new(
            "section",
            new XAttribute("class", "decision"),
            new XAttribute("aria-label", $"{row.Name}: {row.Conclusion}"),
            new XElement(
                "div",
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
                row.DecideNow is { } now
                    ? new XElement(
                        "p",
                        new XAttribute("class", "now"),
                        new XElement("strong", $"{DecisionTable.DecideNow} {now}")
                    )
                    : null,
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
                    new XElement("tbody", row.Evidence.Select(Line))
                ),
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
                new XAttribute("class", "small"),
                $"{DecisionTable.Prompt} ____________ ({row.Hint})"
            )
        );

    private static XElement Line(EvidenceLine line) =>
        new(
            "tr",
            line.IsMuted ? new XAttribute("class", "muted") : null,
            new XElement("th", new XAttribute("scope", "row"), line.Waited),
            new XElement("td", line.Change),
            new XElement("td", line.Share),
            new XElement("td", HtmlGlyph.Of(line.Shape), line.Conclusion)
        );
}
