namespace StabilityStudy.Reporting.Pdf;

/// <summary>Attentions: severity, remark and place, each in its column.</summary>
internal static class AttentionLayout
{
    private const double Gap = 8;

    public static ImmutableArray<Piece> Pieces(
        Attentions attentions,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var severity = Math.Min(
            attentions
                .Lines.Select(l => TextStyle.TableCaption.Width(l.Severity))
                .DefaultIfEmpty(0)
                .Max() + Gap,
            frame.ContentWidth * 0.2
        );
        var anyPlace = attentions.Lines.Any(l => l.Where.Length > 0);
        var place = anyPlace ? frame.ContentWidth * 0.24 : 0;
        var text = frame.ContentWidth - severity - place;
        var list = tags.Add(new Tag("L"));
        return
        [
            .. attentions.Lines.SelectMany(
                (line, i) =>
                    LineColumns.Pieces(
                        [
                            ProseLayout.Column(
                                frame.Left,
                                TextStyle.TableCaption,
                                line.Severity,
                                severity - Gap,
                                "Lbl"
                            ),
                            ProseLayout.Column(
                                frame.Left + severity,
                                TextStyle.Caption,
                                line.Text,
                                text - Gap,
                                "LBody"
                            ),
                            ProseLayout.Column(
                                frame.Left + severity + text,
                                TextStyle.Small,
                                line.Where,
                                place,
                                "LBody"
                            ),
                        ],
                        i == 0 ? 5 : 2,
                        list.Add(new Tag("LI"))
                    )
            ),
        ];
    }
}
