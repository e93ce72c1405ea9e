namespace StabilityStudy.Reporting.Pdf;

/// <summary>What follows: name, conclusion with its shape, facts.</summary>
internal sealed class DecisionAnswer
{
    private readonly DecisionRow _row;
    private readonly TextStyle _word;
    private readonly RichText _name;
    private readonly ImmutableArray<string> _conclusion;
    private readonly ImmutableArray<string> _facts;

    public DecisionAnswer(DecisionRow row, bool isMany)
    {
        _row = row;
        _word = isMany ? TextStyle.AnswerOfMany : TextStyle.Answer;
        _name = RichText.Break("", row.Name, TextStyle.Remark, DecisionColumns.Left);
        _conclusion = LineBreaking.Break(row.Conclusion, _word, DecisionColumns.Left - Glyph - 3);
        _facts = LineBreaking.Break(row.Facts, TextStyle.Head, DecisionColumns.Left);
    }

    private double Glyph => _word.Size;

    public double Height =>
        _name.Height
        + (_conclusion.Length * _word.Leading)
        + (_facts.Length * TextStyle.Head.Leading)
        + 1;

    public void Draw(PageCanvas canvas, double left, double top)
    {
        canvas.Tagged("P", () => _name.Draw(canvas, left, top));
        var word = top + _name.Height;
        VerdictGlyph.Draw(_row.Shape, left, word + ((_word.Leading - Glyph) / 2), Glyph, canvas);
        canvas.Tagged("P", () => canvas.Lines(_conclusion, _word, left + Glyph + 3, word));
        var facts = word + (_conclusion.Length * _word.Leading) + 1;
        canvas.Tagged("P", () => canvas.Lines(_facts, TextStyle.Head, left, facts));
    }
}
