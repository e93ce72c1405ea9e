using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Boxes for signatures with lines to fill in by hand: in one row with the larger one of whoever decides, or two in a row.</summary>
internal static class SignatureLayout
{
    private const double Gutter = 12;
    private const double Padding = 6;
    private const double WritingHeight = 34;
    private const double Gap = 6;
    private const double RowLeading = 12;

    // A line of a signature's small print, 7 points with its leading.
    private const double PrintedLeading = 8.75;

    // Of the width, for whoever decides.
    private const double DecidingShare = 0.5;
    private const double DecidingShareOfMany = 0.44;
    private const int MostBeside = 2;
    private static readonly TextStyle LineLabel = TextStyle.Small with
    {
        Size = 6.8,
        Leading = 8.4,
    };

    public static ImmutableArray<Piece> Pieces(
        SignatureBoxes boxes,
        PageFrame frame,
        SignaturePlaces places,
        ImmutableArray<Tag> tags
    ) =>
        boxes.Boxes.Where(box => box.PrintedLines > 0).ToArray() is [var deciding]
        && boxes.Boxes.Length is > 1 and <= MostBeside + 1
            ? [Beside(boxes, deciding, frame, places, tags)]
            : InRows(boxes, frame, places, tags);

    /// <summary>The larger place of whoever decides last, the others before it, all in one row.</summary>
    private static Piece Beside(
        SignatureBoxes boxes,
        SignatureBox deciding,
        PageFrame frame,
        SignaturePlaces places,
        ImmutableArray<Tag> tags
    )
    {
        var count = boxes.Boxes.Length - 1;
        var shared = frame.ContentWidth - (Gutter * count);
        var right = shared * (count == 1 ? DecidingShare : DecidingShareOfMany);
        var each = (shared - right) / count;
        var heads = boxes.Boxes.Select(box => Head(box, box == deciding ? right : each)).ToArray();
        var height = heads.Max(HeightOf);
        return new Piece(
            height,
            8,
            tags,
            (canvas, top) =>
            {
                var left = frame.Left;
                foreach (var head in heads)
                {
                    var width = head.Box == deciding ? right : each;
                    var area = new XRect(left, top, width, height);
                    Draw(head, area, canvas);
                    Take(head, area, places, canvas);
                    left += width + Gutter;
                }
            }
        );
    }

    private static ImmutableArray<Piece> InRows(
        SignatureBoxes boxes,
        PageFrame frame,
        SignaturePlaces places,
        ImmutableArray<Tag> tags
    )
    {
        var across = boxes.Boxes.Length <= 3 ? Math.Max(1, boxes.Boxes.Length) : 2;
        var width = (frame.ContentWidth - (Gutter * (across - 1))) / across;
        return
        [
            .. boxes
                .Boxes.Chunk(across)
                .Select(row =>
                {
                    var laid = row.Select(b => Head(b, width)).ToArray();
                    var height = laid.Max(HeightOf);
                    return new Piece(
                        height,
                        8,
                        tags,
                        (canvas, top) =>
                        {
                            for (var i = 0; i < laid.Length; i++)
                            {
                                var left = frame.Left + (i * (width + Gutter));
                                var area = new XRect(left, top, width, height);
                                Draw(laid[i], area, canvas);
                                Take(laid[i], area, places, canvas);
                            }
                        }
                    );
                }),
        ];
    }

    /// <summary>Notes where the inside of a box came to stand.</summary>
    private static void Take(BoxHead head, XRect area, SignaturePlaces places, PageCanvas canvas) =>
        places.Add(
            head.Box.Role,
            new XRect(area.Left + 1, area.Top + 1, area.Width - 2, area.Height - 2),
            canvas
        );

    /// <summary>What is printed and written by hand, and at least the lines of a signature.</summary>
    private static double HeightOf(BoxHead head) =>
        Math.Max(
            (head.Lines.Length * TextStyle.Body.Leading)
                + SignatureChoices.Height(head.Choices)
                + (head.Box.Rows.Length * RowLeading)
                + WritingHeight
                + Padding
                + 2,
            head.Box.PrintedLines * PrintedLeading
        );

    private static BoxHead Head(SignatureBox box, double width)
    {
        var state = TextStyle.Strong.Width(box.State);
        var role = LineBreaking.Break(
            box.Role,
            TextStyle.Strong,
            Math.Max(width - state - (3 * Padding), width / 3)
        );
        var meaning = LineBreaking.Break(box.Meaning, TextStyle.Body, width - (2 * Padding));
        return new BoxHead(
            box,
            [
                .. role.Select(l => (l, TextStyle.Strong)),
                .. meaning.Select(l => (l, TextStyle.Body)),
            ],
            SignatureChoices.Place(box.Choices, width - (2 * Padding))
        );
    }

    private static void Draw(BoxHead head, XRect area, PageCanvas canvas)
    {
        canvas.Artifact(() =>
        {
            var border = new XGraphicsPath();
            border.AddRectangle(area);
            canvas.Stroke(border, TextStyle.Ink, 0.7);
        });
        canvas.Tagged(
            "P",
            () =>
            {
                var top = area.Top + 3;
                foreach (var (text, style) in head.Lines)
                {
                    canvas.Text(text + " ", style, area.Left + Padding, top);
                    top += TextStyle.Body.Leading;
                }

                var state = TextStyle.Strong.Width(head.Box.State);
                canvas.Text(
                    LineBreaking.Break(head.Box.State, TextStyle.Strong, double.MaxValue)[0],
                    TextStyle.Strong,
                    area.Right - Padding - state,
                    area.Top + 3
                );
            }
        );
        SignatureChoices.Draw(
            head.Choices,
            area.Left + Padding,
            area.Top + 4 + (head.Lines.Length * TextStyle.Body.Leading),
            canvas
        );
        DrawRows(
            head.Box.Rows,
            area,
            area.Top
                + 4
                + (head.Lines.Length * TextStyle.Body.Leading)
                + SignatureChoices.Height(head.Choices),
            canvas
        );
        DrawWritingLines(area, canvas);
    }

    /// <summary>Each row with a line for the window that is approved.</summary>
    private static void DrawRows(
        ImmutableArray<string> rows,
        XRect area,
        double top,
        PageCanvas canvas
    )
    {
        var right = area.Right - Padding;
        var line = right - (area.Width * 0.3);
        for (var i = 0; i < rows.Length; i++)
        {
            var y = top + (i * RowLeading);
            canvas.Tagged(
                "P",
                () => canvas.Text(rows[i] + " ", TextStyle.Small, area.Left + Padding, y)
            );
            canvas.Artifact(() =>
                canvas.Line(
                    line,
                    y + RowLeading - 2,
                    right,
                    y + RowLeading - 2,
                    0.4,
                    TextStyle.Soft
                )
            );
        }
    }

    /// <summary>Between a line to write on and what it is for.</summary>
    private const double BelowLine = 1.5;

    private static void DrawWritingLines(XRect area, PageCanvas canvas)
    {
        var middle = area.Left + (area.Width * 0.5);
        var left = area.Left + Padding;
        var right = area.Right - Padding;
        var lower = area.Bottom - Padding - LineLabel.Leading - BelowLine;
        var upper = lower - 20;
        DrawWritingLine("Printed name", left, middle - Padding, upper, canvas);
        DrawWritingLine("Date and time", middle, right, upper, canvas);
        DrawWritingLine("Signature", left, right, lower + 2, canvas);
    }

    private static void DrawWritingLine(
        string label,
        double left,
        double right,
        double y,
        PageCanvas canvas
    )
    {
        canvas.Artifact(() => canvas.Line(left, y, right, y, 0.4, TextStyle.Soft));
        canvas.Tagged("P", () => canvas.Text(label, LineLabel, left, y + BelowLine));
    }

    private sealed record BoxHead(
        SignatureBox Box,
        ImmutableArray<(string Text, TextStyle Style)> Lines,
        ImmutableArray<SignatureChoices.ChoiceLine> Choices
    );
}
