using PdfSharp.Drawing;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>
/// Table 1: what follows on the left, the evidence and what speaks against it in the middle, the place of the decision on the right. A row is never split: those
/// for which page 1 has no room stand there in one sentence with their place of decision, and in full on the next page.
/// </summary>
internal sealed class DecisionLayout
{
    /// <summary>More rows in full would be small print.</summary>
    private const int MostInFull = 7;

    /// <summary>From so many rows on they stand closer.</summary>
    private const int Many = 4;

    /// <summary>Height of the place of decision of a row in one sentence: one line of a stamp.</summary>
    private const double BriefPlace = 15;

    /// <summary>Between a line to write on and what may stand there.</summary>
    private const double BelowLine = 3;

    private const int InGridRow = 4;
    private static readonly double s_gridPlace = Mm(12);

    private readonly DecisionTable _table;
    private readonly PageFrame _frame;
    private readonly SignaturePlaces _places;
    private readonly ImmutableArray<Tag> _tags;
    private bool _isMany;
    private readonly Tag _list = new("L");

    public DecisionLayout(
        DecisionTable table,
        PageFrame frame,
        SignaturePlaces places,
        ImmutableArray<Tag> tags
    )
    {
        _table = table;
        _frame = frame;
        _places = places;
        _tags = tags;
        _isMany = table.Rows.Length >= Many;
    }

    private double Middle => _frame.Left + DecisionColumns.Left + DecisionColumns.Gutter;

    private double Right => Middle + DecisionColumns.Middle + DecisionColumns.Gutter;

    /// <summary>The rows on page 1 and those that follow in full on the next.</summary>
    /// <param name="room">Height that the table may take on page 1, in points.</param>
    public (ImmutableArray<Piece> First, ImmutableArray<Piece> Next) Pieces(double room)
    {
        var full = Math.Min(MostInFull, _table.Rows.Length);
        var pieces = First(full);
        // Closer first, then fewer rows.
        _isMany |= FigureRoom.HeightOf(pieces) > room;
        pieces = First(full);
        while (full > 0 && FigureRoom.HeightOf(pieces) > room)
        {
            full--;
            pieces = First(full);
        }

        if (FigureRoom.HeightOf(pieces) > room)
        {
            (full, pieces) = (0, Grid());
        }

        // In the grid no row stands in full.
        return (pieces, full == _table.Rows.Length ? [] : Continued(_table.Rows[full..]));
    }

    /// <summary>The rows that page 1 only names, under the head of the table on every page.</summary>
    private ImmutableArray<Piece> Continued(ImmutableArray<DecisionRow> rows)
    {
        var head = Head(isContinued: true);
        var repeated = head with
        {
            Draw = (canvas, top) => canvas.Untagged(() => head.Draw(canvas, top)),
        };
        return
        [
            head,
            .. rows.Select(row => Row(row, isDecidedHere: false) with { RepeatedAbove = repeated }),
        ];
    }

    private ImmutableArray<Piece> First(int full) =>
        [
            Head(isContinued: false),
            .. _table.Rows[..full].Select(row => Row(row, isDecidedHere: true)),
            .. full < _table.Rows.Length
                ? [Continues(), .. _table.Rows[full..].Select(Brief)]
                : ImmutableArray<Piece>.Empty,
            Note(),
        ];

    /// <summary>All rows by name and conclusion with their places of decision, side by side, and below them what contradicts which.</summary>
    private ImmutableArray<Piece> Grid() =>
        [
            Head(isContinued: false),
            Continues(),
            .. _table.Rows.Chunk(InGridRow).Select(GridRow),
            .. _table.Contradictions.Select(text =>
                KeyMessageLayout.Piece(
                    new KeyMessage("", text) { IsPlain = true },
                    _frame,
                    _tags
                ) with
                {
                    SpaceBefore = 1.5,
                }
            ),
            Note(),
        ];

    private Piece GridRow(DecisionRow[] rows)
    {
        var width = _frame.ContentWidth / InGridRow;
        var codes = rows.Select(row =>
                LineBreaking.Break(
                    row.Code,
                    TextStyle.Head,
                    width - s_gridPlace - DecisionColumns.Number - 6
                )
            )
            .ToArray();
        var height = Math.Max(
            BriefPlace,
            codes.Max(lines => lines.Length) * TextStyle.Head.Leading
        );
        return new Piece(
            height + 1,
            1,
            _tags.Add(_list).Add(new Tag("LI")),
            (canvas, top) =>
            {
                for (var i = 0; i < rows.Length; i++)
                {
                    var (row, lines, left) = (rows[i], codes[i], _frame.Left + (i * width));
                    var place = new XRect(
                        left + width - s_gridPlace - 4,
                        top,
                        s_gridPlace,
                        BriefPlace
                    );
                    VerdictGlyph.Draw(row.Shape, left, top + 2.5, 8, canvas);
                    canvas.Tagged(
                        "P",
                        () =>
                            canvas.Lines(
                                lines,
                                TextStyle.Head,
                                left + DecisionColumns.Number,
                                top + 1.5
                            )
                    );
                    canvas.Artifact(() =>
                        canvas.Line(place.Left, top + 12, place.Right, top + 12, 0.4, TextStyle.Ink)
                    );
                    AddPlace(row, place, canvas);
                }
            }
        );
    }

    /// <summary>Notes where the decision on a row belongs.</summary>
    private void AddPlace(DecisionRow row, XRect place, PageCanvas canvas)
    {
        if (_table.IsDecidedInRows)
        {
            _places.AddDecision(row.Number, place, canvas);
        }
    }

    private Piece Head(bool isContinued)
    {
        string[] heads =
        [
            _table.Head.Waited,
            _table.Head.Change,
            _table.Head.Share,
            _table.Head.Conclusion,
        ];
        var cells = heads
            .Select(
                (text, i) =>
                    LineBreaking.Break(text, TextStyle.Head, DecisionColumns.Evidence[i] - Mm(1.5))
            )
            .ToArray();
        var style = TextStyle.Head;
        var weigh = LineBreaking.Break(DecisionTable.Weigh, style, DecisionColumns.Left);
        var lines = Math.Max(cells.Max(cell => cell.Length), weigh.Length + 1);
        var height = Mm(1.4) + (lines * style.Leading) + Mm(1.2);
        return new Piece(
            height,
            isContinued ? 0 : Mm(3),
            _tags,
            (canvas, top) =>
            {
                Rule(canvas, top, 1.4, TextStyle.Accent);
                var first = top + Mm(1.4);
                canvas.Tagged(
                    "P",
                    () =>
                        canvas.Text(
                            DecisionTable.Caption + (isContinued ? " (continued) " : " "),
                            style,
                            _frame.Left,
                            first
                        )
                );
                var x = Middle;
                for (var i = 0; i < cells.Length; i++)
                {
                    var (cell, left) = (cells[i], x);
                    var above = first + ((lines - cell.Length) * style.Leading);
                    canvas.Tagged("P", () => canvas.Lines(cell, style, left, above));
                    x += DecisionColumns.Evidence[i];
                }

                canvas.Tagged(
                    "P",
                    () => canvas.Lines(weigh, style, _frame.Left, first + style.Leading)
                );
                canvas.Tagged(
                    "P",
                    () => canvas.Text(DecisionTable.Decision + " ", style, Right, first)
                );
                Rule(canvas, top + height, 0.5, TextStyle.Ink);
            }
        )
        {
            HoldNext = Hold.Firm,
        };
    }

    private Piece Row(DecisionRow row, bool isDecidedHere)
    {
        var (above, below) = _isMany ? (Mm(1.3), Mm(1.4)) : (Mm(2.2), Mm(2.6));
        var answer = new DecisionAnswer(row, _isMany);
        var weighed = new DecisionEvidence(row, _isMany);
        var prompt = LineBreaking.Break(
            isDecidedHere ? DecisionTable.Prompt : "Decision: page 1",
            TextStyle.Head,
            DecisionColumns.Right
        );
        var hint = isDecidedHere
            ? LineBreaking.Break(row.Hint, TextStyle.Head, DecisionColumns.Right)
            : [];
        var place = ((prompt.Length + hint.Length + 1) * TextStyle.Head.Leading) + 1 + BelowLine;
        var height = above + Math.Max(Math.Max(answer.Height, weighed.Height), place) + below;
        return new Piece(
            height,
            0,
            _tags.Add(_list).Add(new Tag("LI")),
            (canvas, top) =>
            {
                var start = top + above;
                answer.Draw(canvas, _frame.Left, start);
                weighed.Draw(canvas, Middle, start);
                canvas.Tagged("P", () => canvas.Lines(prompt, TextStyle.Head, Right, start));
                if (isDecidedHere)
                {
                    var line = start + ((prompt.Length + 1) * TextStyle.Head.Leading) + 1;
                    canvas.Artifact(() =>
                        canvas.Line(
                            Right,
                            line,
                            Right + DecisionColumns.Right,
                            line,
                            0.4,
                            TextStyle.Ink
                        )
                    );
                    canvas.Tagged(
                        "P",
                        () => canvas.Lines(hint, TextStyle.Head, Right, line + BelowLine)
                    );
                    AddPlace(
                        row,
                        new XRect(
                            Right - Mm(1.5),
                            top + 1,
                            DecisionColumns.Right + Mm(1.5),
                            height - 2
                        ),
                        canvas
                    );
                }

                Rule(canvas, top + height, 0.5, TextStyle.Ink);
            }
        );
    }

    private Piece Continues()
    {
        var text = RichText.Break(
            "Table 1 continues on the next page",
            "with these rows. Read their figures there, then decide here:",
            TextStyle.Note,
            _frame.ContentWidth
        );
        return new Piece(
            text.Height,
            3,
            _tags,
            (canvas, top) => canvas.Tagged("P", () => text.Draw(canvas, _frame.Left, top))
        )
        {
            HoldNext = Hold.Firm,
        };
    }

    /// <summary>A row in one sentence, with its shape and its place of decision.</summary>
    private Piece Brief(DecisionRow row)
    {
        var text = RichText.Break(
            "",
            row.Brief,
            TextStyle.Note,
            DecisionColumns.Left
                + DecisionColumns.Gutter
                + DecisionColumns.Middle
                - DecisionColumns.Number
        );
        var height = Math.Max(text.Height, BriefPlace) + 1.5;
        return new Piece(
            height,
            1.5,
            _tags.Add(_list).Add(new Tag("LI")),
            (canvas, top) =>
            {
                VerdictGlyph.Draw(row.Shape, _frame.Left, top + 1, 8, canvas);
                canvas.Tagged(
                    "P",
                    () => text.Draw(canvas, _frame.Left + DecisionColumns.Number, top)
                );
                canvas.Tagged(
                    "P",
                    () => canvas.Text(DecisionTable.Prompt + " ", TextStyle.Head, Right, top)
                );
                canvas.Artifact(() =>
                    canvas.Line(
                        Right + TextStyle.Head.Width(DecisionTable.Prompt + " "),
                        top + 9,
                        Right + DecisionColumns.Right,
                        top + 9,
                        0.4,
                        TextStyle.Ink
                    )
                );
                AddPlace(
                    row,
                    new XRect(Right - Mm(1.5), top, DecisionColumns.Right + Mm(1.5), BriefPlace),
                    canvas
                );
            }
        );
    }

    private Piece Note()
    {
        var lines = LineBreaking.Break(_table.Note, TextStyle.Head, _frame.ContentWidth);
        return new Piece(
            lines.Length * TextStyle.Head.Leading,
            2.5,
            _tags,
            (canvas, top) =>
                canvas.Tagged("P", () => canvas.Lines(lines, TextStyle.Head, _frame.Left, top))
        );
    }

    private void Rule(PageCanvas canvas, double y, double width, XColor color) =>
        canvas.Artifact(() => canvas.Line(_frame.Left, y, _frame.Right, y, width, color));

    private static double Mm(double value) => PageFrame.Millimeters(value);
}
