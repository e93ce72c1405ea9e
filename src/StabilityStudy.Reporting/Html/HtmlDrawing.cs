using System.Xml.Linq;

namespace StabilityStudy.Reporting.Html;

/// <summary>
/// Writes a report as one page of HTML that needs no other file and no script: fonts and figures stand inside. It is a copy for reading; what is signed is the PDF.
/// </summary>
public static class HtmlDrawing
{
    /// <summary>Said at the top and where the PDF has its signatures.</summary>
    internal const string ReadingCopy =
        "A copy for reading. What is signed and verified is the PDF of the same study.";

    private const string ContentsId = "contents";
    private const string ContentsTitle = "Contents";

    /// <summary>Writes a report.</summary>
    /// <param name="model">The report.</param>
    /// <returns>The page; equal models give equal pages.</returns>
    public static string Draw(ReportModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var specimens = SpecimenRows.Of(model);
        var blocks = new HtmlBlocks(specimens);
        ImmutableArray<XElement> sections =
        [
            .. model.Sections.Select(
                (section, index) =>
                    new XElement(
                        "section",
                        new XAttribute("aria-labelledby", IdOf(index)),
                        new XElement("h2", new XAttribute("id", IdOf(index)), section.Title),
                        section.Blocks.AddRange(section.Foot).SelectMany(blocks.Write)
                    )
            ),
        ];
        var main = new XElement("main", sections);
        new SpecimenLinks(specimens).Put(main);
        // The decision comes first; whoever wants more finds the way below it.
        main.Elements().FirstOrDefault()?.AddAfterSelf(Contents(model));
        var page = new XElement(
            "html",
            new XAttribute("lang", model.Language),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement(
                    "meta",
                    new XAttribute("name", "viewport"),
                    new XAttribute("content", "width=device-width, initial-scale=1")
                ),
                new XElement("title", model.Title),
                new XElement("style", HtmlStyle.Sheet)
            ),
            new XElement(
                "body",
                new XElement(
                    "header",
                    new XElement(
                        "div",
                        new XAttribute("class", "running"),
                        new XElement("span", model.Header.Left),
                        new XElement("span", model.Header.Right),
                        new XElement("span", model.Header.Fingerprint)
                    ),
                    new XElement("h1", model.Title),
                    new XElement(
                        "p",
                        new XAttribute("class", "small"),
                        ReadingCopy,
                        model.Sections.IsEmpty
                            ? null
                            : new object[]
                            {
                                " ",
                                new XElement(
                                    "a",
                                    new XAttribute("href", "#" + ContentsId),
                                    ContentsTitle
                                ),
                            }
                    )
                ),
                main
            )
        );
        return "<!DOCTYPE html>\n" + HtmlText.Of(page) + "\n";
    }

    private static XElement Contents(ReportModel model) =>
        new(
            "nav",
            new XAttribute("aria-labelledby", ContentsId),
            new XElement("h2", new XAttribute("id", ContentsId), ContentsTitle),
            new XElement(
                "ol",
                model.Sections.Select(
                    (section, index) =>
                        new XElement(
                            "li",
                            new XElement(
                                "a",
                                new XAttribute("href", "#" + IdOf(index)),
                                section.Title
                            )
                        )
                )
            )
        );

    private static string IdOf(int section) =>
        "section-" + (section + 1).ToString(CultureInfo.InvariantCulture);
}
