namespace StabilityStudy.Reporting.Pdf;

/// <summary>Gives a figure without a height of its own the room that the other blocks of its section leave.</summary>
/// <param name="frame">Page on which they will stand.</param>
/// <param name="layOut">Turns a block into pieces.</param>
internal sealed class FigureRoom(PageFrame frame, Func<Block, ImmutableArray<Piece>> layOut)
{
    /// <summary>How much of the white space between blocks may give way to a figure.</summary>
    private const double MostWhiteGiven = 0.5;

    /// <summary>Points that rounding never uses up.</summary>
    private const double Reserve = 0.1;

    /// <summary>Height of pieces one below the other, in points.</summary>
    public static double HeightOf(ImmutableArray<Piece> pieces) =>
        pieces.Sum(piece => piece.Height + piece.SpaceBefore);

    /// <summary>The pieces of a section with its figure: white space gives way before the figure moves to the end.</summary>
    /// <param name="floating">The figure.</param>
    /// <param name="before">What stands before it.</param>
    /// <param name="after">What stands after it.</param>
    /// <param name="room">Height for all of them, in points.</param>
    public ImmutableArray<Piece> Place(
        Floating floating,
        ImmutableArray<Piece> before,
        ImmutableArray<Piece> after,
        double room
    )
    {
        // A figure whose texts need it is higher than asked.
        var least = floating.Figure with
        {
            HeightMillimeters = floating.LeastHeightMillimeters,
        };
        var needed = FigureLayout.HeightOf([least], frame) + FigureLayout.SpaceBefore;
        var left = room - HeightOf(before) - HeightOf(after);
        var white = before.Concat(after).Sum(piece => piece.SpaceBefore);
        var missing = needed - left + Reserve;
        if (left < needed && missing <= MostWhiteGiven * white)
        {
            var factor = 1 - (missing / white);
            return [.. Tightened(before, factor), .. layOut(least), .. Tightened(after, factor)];
        }

        if (left < needed)
        {
            return [.. before, .. after, .. layOut(floating.Figure)];
        }

        var height = floating.LeastHeightMillimeters + PageFrame.ToMillimeters(left - needed);
        var figure = floating.Figure with
        {
            HeightMillimeters = Math.Min(height, floating.Figure.HeightMillimeters),
        };
        return [.. before, .. layOut(figure), .. after];
    }

    private static ImmutableArray<Piece> Tightened(ImmutableArray<Piece> pieces, double factor) =>
        [.. pieces.Select(piece => piece with { SpaceBefore = piece.SpaceBefore * factor })];
}
