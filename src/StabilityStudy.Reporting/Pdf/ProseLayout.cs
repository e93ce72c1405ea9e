namespace StabilityStudy.Reporting.Pdf;

/// <summary>Running text, lists and fixed-width lines.</summary>
internal static class ProseLayout
{
    private const double BulletIndent = 11;

    /// <summary>So many terms of a run-in list are not parted by the end of a page.</summary>
    private const int RunInTogether = 6;

    private const double TermShare = 0.19;
    private const double RuledTermShare = 0.23;
    private const double RuleAbove = 4;
    private const double RuleBelow = 2.5;

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
                        i == 0 ? 3
                            : body.Leading > 11 ? 2
                            : 1,
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
        if (definitions.IsRunIn)
        {
            return
            [
                .. definitions
                    .Items.Chunk(RunInTogether)
                    .Select((items, i) => RunIn(items, i == 0, body, frame, list)),
            ];
        }

        var term = frame.ContentWidth * (definitions.IsRuled ? RuledTermShare : TermShare);
        return
        [
            .. definitions.Items.SelectMany(
                (item, i) =>
                {
                    var tagged = list.Add(new Tag("LI"));
                    return LineColumns
                        .Pieces(
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
                            definitions.IsRuled ? RuleBelow
                                : i == 0 ? 4
                                : body.Leading > 11 ? 2.5
                                : 1,
                            tagged
                        )
                        .InsertRange(
                            0,
                            definitions.IsRuled
                                ? [Rule(i == 0, frame)]
                                : ImmutableArray<Piece>.Empty
                        )
                        .AddRange(Aside(item, frame, term, tagged));
                }
            ),
        ];
    }

    /// <summary>The line above a statement; the first one opens the list.</summary>
    private static Piece Rule(bool isFirst, PageFrame frame) =>
        new(
            0,
            isFirst ? RuleAbove * 1.5 : RuleAbove,
            [],
            (canvas, top) =>
                canvas.Artifact(() =>
                    canvas.Line(
                        frame.Left,
                        top,
                        frame.Right,
                        top,
                        isFirst ? 0.8 : 0.4,
                        isFirst ? TextStyle.Ink : TextStyle.Hairline
                    )
                )
        )
        {
            HoldNext = Hold.Firm,
        };

    private static ImmutableArray<Piece> Aside(
        Definition item,
        PageFrame frame,
        double term,
        ImmutableArray<Tag> tags
    ) =>
        item.Aside.Length == 0
            ? []
            : LineColumns.Pieces(
                [
                    Column(
                        frame.Left + term,
                        TextStyle.Small,
                        item.Aside,
                        frame.ContentWidth - term,
                        "LBody"
                    ),
                ],
                0.5,
                tags
            );

    /// <summary>"Term: explanation Term: explanation", the terms heavier; in the structure an item of the list.</summary>
    private static Piece RunIn(
        Definition[] items,
        bool isFirst,
        TextStyle body,
        PageFrame frame,
        ImmutableArray<Tag> list
    )
    {
        var text = RichText.Break(
            items.SelectMany(item =>
                new[] { (item.Term + ":", true), (item.Explanation + " ", false) }
            ),
            body,
            frame.ContentWidth
        );
        return new Piece(
            text.Height,
            isFirst ? 4 : 0,
            list.Add(new Tag("LI")),
            (canvas, top) => canvas.Tagged("LBody", () => text.Draw(canvas, frame.Left, top))
        );
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
