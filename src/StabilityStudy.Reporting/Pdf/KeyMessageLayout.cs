using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>A paragraph that opens with its subject, on a tint or plain.</summary>
internal static class KeyMessageLayout
{
    private static readonly double s_inset = PageFrame.Millimeters(2.6);
    private static readonly double s_above = PageFrame.Millimeters(1.9);

    public static Piece Piece(KeyMessage message, PageFrame frame, ImmutableArray<Tag> tags)
    {
        var isOnWhite = message.IsPlain || message.IsCaption;
        var style =
            message.IsCaption ? TextStyle.Caption
            : message.IsPlain ? TextStyle.Note
            : TextStyle.Remark;
        var (side, above) = isOnWhite ? (0, 0) : (s_inset, s_above);
        var text = RichText.Break(
            message.Subject,
            message.Text,
            style,
            frame.ContentWidth - (2 * side)
        );
        var height = text.Height + (2 * above);
        return new Piece(
            height,
            isOnWhite ? 7 : 6,
            tags,
            (canvas, top) =>
            {
                if (!isOnWhite)
                {
                    canvas.Artifact(() =>
                    {
                        var area = new XGraphicsPath();
                        area.AddRectangle(new XRect(frame.Left, top, frame.ContentWidth, height));
                        canvas.Fill(area, TextStyle.Tint);
                    });
                }

                canvas.Tagged(
                    message.IsCaption ? "Caption" : "P",
                    () => text.Draw(canvas, frame.Left + side, top + above)
                );
            }
        )
        {
            HoldNext = message.IsCaption ? Hold.Firm : Hold.None,
        };
    }
}
