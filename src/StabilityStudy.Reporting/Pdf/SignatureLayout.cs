using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Boxes for signatures, two in a row or three where there are three, with lines to fill in by hand.</summary>
internal static class SignatureLayout
{
    private const double Gutter = 12;
    private const double Padding = 6;
    private const double WritingHeight = 34;
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
    )
    {
        var across = boxes.Boxes.Length == 3 ? 3 : 2;
        var width = (frame.ContentWidth - (Gutter * (across - 1))) / across;
        return
        [
            .. boxes
                .Boxes.Chunk(across)
                .Select(row =>
                {
                    var laid = row.Select(b => Head(b, width)).ToArray();
                    var height =
                        laid.Max(h =>
                            (h.Lines.Length * TextStyle.Body.Leading)
                            + SignatureChoices.Height(h.Choices)
                        )
                        + WritingHeight
                        + Padding
                        + 2;
                    return new Piece(
                        height,
                        8,
                        tags,
                        (canvas, top) =>
                        {
                            for (var i = 0; i < laid.Length; i++)
                            {
                                var left = frame.Left + (i * (width + Gutter));
                                Draw(laid[i], new XRect(left, top, width, height), canvas);
                                places.Add(
                                    laid[i].Box.Role,
                                    new XRect(left + 1, top + 1, width - 2, height - 2),
                                    canvas
                                );
                            }
                        }
                    );
                }),
        ];
    }

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
        DrawWritingLines(area, canvas);
    }

    private static void DrawWritingLines(XRect area, PageCanvas canvas)
    {
        var middle = area.Left + (area.Width * 0.5);
        var left = area.Left + Padding;
        var right = area.Right - Padding;
        var lower = area.Bottom - Padding - LineLabel.Leading;
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
        canvas.Tagged("P", () => canvas.Text(label, LineLabel, left, y));
    }

    private sealed record BoxHead(
        SignatureBox Box,
        ImmutableArray<(string Text, TextStyle Style)> Lines,
        ImmutableArray<SignatureChoices.ChoiceLine> Choices
    );
}
