namespace StabilityStudy.Reporting.Pdf;

/// <summary>Running text, lists and fixed-width lines.</summary>
internal static class ProseLayout
{
    private const double BulletIndent = 11;
    private const double TermShare = 0.26;

    public static ImmutableArray<Piece> Paragraph(
        Paragraph paragraph,
        TextStyle body,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var style = paragraph.Style switch
        {
            ParagraphStyle.Lead => TextStyle.Lead,
            ParagraphStyle.Small => TextStyle.Small,
            ParagraphStyle.Strong => TextStyle.Strong,
            ParagraphStyle.Body => body,
        };
        return LineColumns.Pieces(
            [Column(frame.Left, style, paragraph.Text, frame.ContentWidth, "P")],
            style.Size * 0.5,
            tags
        );
    }

    public static ImmutableArray<Piece> Bullets(
        Bullets bullets,
        TextStyle body,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var list = tags.Add(new Tag("L"));
        return
        [
            .. bullets.Items.SelectMany(
                (text, i) =>
                    LineColumns.Pieces(
                        [
                            new LineColumn(frame.Left + 2, body, ["•"], new Tag("Lbl")),
                            Column(
                                frame.Left + BulletIndent,
                                body,
                                text,
                                frame.ContentWidth - BulletIndent,
                                "LBody"
                            ),
                        ],
                        i == 0 ? 4 : 2,
                        list.Add(new Tag("LI"))
                    )
            ),
        ];
    }

    public static ImmutableArray<Piece> Definitions(
        DefinitionList definitions,
        TextStyle body,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var list = tags.Add(new Tag("L"));
        var term = frame.ContentWidth * TermShare;
        return
        [
            .. definitions.Items.SelectMany(
                (item, i) =>
                    LineColumns.Pieces(
                        [
                            Column(
                                frame.Left,
                                body with
                                {
                                    Face = Fonts.ReportFonts.Semibold,
                                },
                                item.Term,
                                term - 8,
                                "Lbl"
                            ),
                            Column(
                                frame.Left + term,
                                body,
                                item.Explanation,
                                frame.ContentWidth - term,
                                "LBody"
                            ),
                        ],
                        i == 0 ? 5 : 2.5,
                        list.Add(new Tag("LI"))
                    )
            ),
        ];
    }

    public static ImmutableArray<Piece> Monospace(
        MonospaceLines lines,
        PageFrame frame,
        ImmutableArray<Tag> tags
    ) =>
        lines.Lines.IsEmpty
            ? []
            : LineColumns.Pieces(
                [
                    new LineColumn(
                        frame.Left + 4,
                        TextStyle.Mono,
                        [
                            .. lines.Lines.SelectMany(l =>
                                LineBreaking.BreakFixed(l, TextStyle.Mono, frame.ContentWidth - 4)
                            ),
                        ],
                        new Tag("P")
                    ),
                ],
                5,
                tags
            );

    internal static LineColumn Column(
        double x,
        TextStyle style,
        string text,
        double width,
        string tag
    ) => new(x, style, LineBreaking.Break(text, style, width), new Tag(tag));
}
