namespace StabilityStudy.Reporting.Pdf;

/// <summary>The conclusions: shape, word and subject in one line, the sentence below.</summary>
internal static class VerdictLayout
{
    private const double Indent = 20;
    private const double GlyphSize = 12;

    public static ImmutableArray<Piece> Pieces(
        VerdictBlock verdict,
        PageFrame frame,
        ImmutableArray<Tag> tags
    ) => [.. verdict.Lines.SelectMany(line => One(line, frame, tags))];

    private static ImmutableArray<Piece> One(
        VerdictLine line,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var left = frame.Left + Indent;
        var width = frame.ContentWidth - Indent;
        var word = TextStyle.VerdictWord.Width(line.Word) + 9;
        var subject = TextStyle.Strong.Width(line.Subject);
        ImmutableArray<LineColumn> columns =
            word + subject <= width
                ?
                [
                    new LineColumn(
                        left,
                        TextStyle.VerdictWord,
                        LineBreaking.Break(line.Word, TextStyle.VerdictWord, width),
                        new Tag("P")
                    ),
                    new LineColumn(
                        left + word,
                        TextStyle.Strong,
                        LineBreaking.Break(line.Subject, TextStyle.Strong, width),
                        new Tag("P")
                    ),
                ]
                :
                [
                    new LineColumn(
                        left,
                        TextStyle.VerdictWord,
                        [
                            .. LineBreaking.Break(line.Word, TextStyle.VerdictWord, width),
                            .. LineBreaking.Break(line.Subject, TextStyle.VerdictWord, width),
                        ],
                        new Tag("P")
                    ),
                ];
        var sentence = LineColumns.Pieces(
            [ProseLayout.Column(left, TextStyle.Body, line.Sentence, width, "P")],
            0,
            tags
        );
        return
        [
            .. LineColumns
                .Pieces(
                    columns,
                    5,
                    tags,
                    (canvas, top) =>
                        VerdictGlyph.Draw(line.Shape, frame.Left + 1, top + 1, GlyphSize, canvas)
                )
                .Select(p => p with { HoldNext = Hold.Firm }),
            .. sentence,
        ];
    }
}
