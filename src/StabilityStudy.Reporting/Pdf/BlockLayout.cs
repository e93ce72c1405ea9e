namespace StabilityStudy.Reporting.Pdf;

/// <summary>Turns blocks into pieces.</summary>
/// <param name="frame">Page on which they will stand.</param>
/// <param name="figures">Collects the charts.</param>
/// <param name="signatures">Collects the rectangles for signatures, while drawing.</param>
/// <param name="outline">Makes bookmarks, while drawing.</param>
internal sealed class BlockLayout(
    PageFrame frame,
    FigureBook figures,
    SignaturePlaces signatures,
    Bookmarks outline
)
{
    /// <summary>Running text of the section that is being laid out.</summary>
    private bool _isLookedUp;

    private TextStyle Running => _isLookedUp ? TextStyle.LookedUp : TextStyle.Body;

    /// <summary>The title of the document.</summary>
    public ImmutableArray<Piece> Title(string text) =>
        [
            .. FirmLines(text, TextStyle.Title, 0, [], new Tag("P")),
            new Piece(
                3,
                0,
                [],
                (canvas, top) =>
                    canvas.Artifact(() =>
                        canvas.Line(
                            frame.Left,
                            top + 2.5,
                            frame.Right,
                            top + 2.5,
                            1.1,
                            TextStyle.Accent
                        )
                    )
            )
            {
                HoldNext = Hold.Firm,
            },
        ];

    /// <summary>A section with its heading.</summary>
    /// <param name="section">The section.</param>
    /// <param name="above">Height already taken of the page on which it starts, where that is known.</param>
    public ImmutableArray<Piece> Section(Section section, double above)
    {
        ImmutableArray<Tag> tags = [new Tag("Sect", isGrouping: true)];
        _isLookedUp = section.IsLookedUp;
        var heading = FirmLines(
            section.Title,
            TextStyle.SectionTitle,
            above > 0 ? 7 : 10,
            tags,
            new Tag("H1")
        );
        heading = WithBookmark(heading, section.Title, level: 1);
        heading = heading.SetItem(0, heading[0] with { StartsPage = section.StartsOnNewPage });
        if (section.Blocks.OfType<DecisionTable>().Any())
        {
            return FirstPage(section, above, tags);
        }

        var foot = Grouped(Blocks(section.Foot, tags));
        var room =
            frame.ContentHeight - above - FigureRoom.HeightOf(heading) - FigureRoom.HeightOf(foot);
        return Joined(heading, WithFoot(Blocks(section.Blocks, tags), foot, room));
    }

    /// <summary>
    /// Page 1: the title of the document is its heading. The table gives rows to the next page before anything else gives way, and the figure goes there
    /// where it has no room.
    /// </summary>
    private ImmutableArray<Piece> FirstPage(Section section, double above, ImmutableArray<Tag> tags)
    {
        var foot = Grouped(Blocks(section.Foot, tags));
        var at = section.Blocks.IndexOf(section.Blocks.OfType<DecisionTable>().First());
        var before = Blocks(section.Blocks[..at], tags);
        var rest = section.Blocks[(at + 1)..];
        var figure = rest.OfType<Floating>().FirstOrDefault();
        var after = Blocks([.. rest.Where(block => block is not Floating)], tags);
        var room =
            frame.ContentHeight
            - above
            - FigureRoom.HeightOf(foot)
            - FigureRoom.HeightOf(before)
            - FigureRoom.HeightOf(after);
        var (rows, next) = new DecisionLayout(
            (DecisionTable)section.Blocks[at],
            frame,
            signatures,
            tags
        ).Pieces(room);
        var content = figure is null
            ? [.. before, .. rows, .. after]
            : new FigureRoom(frame, block => One(block, tags)).Place(
                figure,
                [
                    .. before,
                    .. rows,
                    .. Blocks([.. rest.TakeWhile(block => block is not Floating)], tags),
                ],
                Blocks([.. rest.SkipWhile(block => block is not Floating).Skip(1)], tags),
                frame.ContentHeight - above - FigureRoom.HeightOf(foot)
            );
        var fitting = frame.ContentHeight - above - FigureRoom.HeightOf(foot);
        var first =
            FigureRoom.HeightOf(content) <= fitting
                ? content.Length
                : Pagination.Fill(content, fitting)[0].Length;
        ImmutableArray<Piece> continued = [.. next, .. content[first..]];
        if (!continued.IsEmpty)
        {
            continued = continued.SetItem(0, continued[0] with { StartsPage = true });
        }

        ImmutableArray<Piece> all = [.. content[..first], .. foot, .. continued];
        return WithBookmark(all, section.Title, level: 1);
    }

    /// <summary>The foot closes the first page; what found no room above it follows on the next.</summary>
    private static ImmutableArray<Piece> WithFoot(
        ImmutableArray<Piece> content,
        ImmutableArray<Piece> foot,
        double room
    )
    {
        if (foot.IsEmpty || FigureRoom.HeightOf(content) <= room)
        {
            return [.. content, .. foot];
        }

        var below = room - content[0].SpaceBefore;
        var first = Pagination.Fill(content, below)[0].Count(placed => !placed.Repeated);
        return
        [
            .. content[..first],
            .. foot,
            content[first] with
            {
                StartsPage = true,
            },
            .. content[(first + 1)..],
        ];
    }

    private ImmutableArray<Piece> Blocks(ImmutableArray<Block> blocks, ImmutableArray<Tag> tags)
    {
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        var startsPage = false;
        foreach (var (index, block) in blocks.Index())
        {
            if (block is PageBreak)
            {
                startsPage = true;
                continue;
            }

            var made = One(block, tags);
            if (made.IsEmpty)
            {
                continue;
            }

            if (
                block is Paragraph
                && index + 1 < blocks.Length
                && blocks[index + 1] is Table or MonospaceLines
            )
            {
                // A sentence that leads to a table or a list does not stay behind without it.
                made = made.SetItem(made.Length - 1, made[^1] with { HoldNext = Hold.Firm });
            }

            pieces.AddRange(made);
            if (startsPage)
            {
                var first = pieces.Count - made.Length;
                pieces[first] = pieces[first] with { StartsPage = true };
                startsPage = false;
            }
        }

        return pieces.ToImmutable();
    }

    private ImmutableArray<Piece> One(Block block, ImmutableArray<Tag> tags) =>
        block switch
        {
            Heading heading => WithBookmark(
                FirmLines(heading.Text, TextStyle.Heading, 7, tags, new Tag("H2")),
                heading.Text,
                level: 2
            ),
            Paragraph paragraph => ProseLayout.Paragraph(paragraph, Running, frame, tags),
            Bullets bullets => ProseLayout.Bullets(bullets, Running, frame, tags),
            DefinitionList list => ProseLayout.Definitions(list, Running, frame, tags),
            MonospaceLines lines => ProseLayout.Monospace(lines, frame, tags),
            VerdictBlock verdict => VerdictLayout.Pieces(verdict, frame, tags),
            DecisionTable decisions => new DecisionLayout(decisions, frame, signatures, tags)
                .Pieces(double.MaxValue)
                .First,
            KeyMessage message => [KeyMessageLayout.Piece(message, frame, tags)],
            Table table => TableLayout.Pieces(table, frame, _isLookedUp, tags),
            ChartBlock chart => FigureLayout.Pieces([chart], frame, figures, tags),
            ChartRow row => FigureLayout.Pieces(row.Charts, frame, figures, tags),
            FlowFigure flow => FlowLayout.Pieces(flow, frame, tags),
            SignatureBoxes boxes => SignatureLayout.Pieces(boxes, frame, signatures, tags),
            Floating floating => One(floating.Figure, tags),
            KeepTogether group => Grouped(
                Blocks(group.Blocks, tags),
                group.IsWhole ? Hold.Whole : Hold.Group
            ),
            PageBreak => [],
            _ => throw new InvalidOperationException($"No drawing of {block.GetType().Name}."),
        };

    private ImmutableArray<Piece> FirmLines(
        string text,
        TextStyle style,
        double spaceBefore,
        ImmutableArray<Tag> tags,
        Tag tag
    )
    {
        var lines = LineBreaking.Break(text, style, frame.ContentWidth);
        return
        [
            .. LineColumns
                .Pieces([new LineColumn(frame.Left, style, lines, tag)], spaceBefore, tags)
                .Select(p => p with { HoldNext = Hold.Firm }),
        ];
    }

    private ImmutableArray<Piece> WithBookmark(
        ImmutableArray<Piece> pieces,
        string text,
        int level
    ) =>
        pieces.SetItem(
            0,
            pieces[0] with
            {
                Draw = (canvas, top) =>
                {
                    outline.Add(text, level, canvas, top);
                    pieces[0].Draw(canvas, top);
                },
            }
        );

    /// <summary>A heading with nothing below it holds nothing.</summary>
    private static ImmutableArray<Piece> Joined(
        ImmutableArray<Piece> heading,
        ImmutableArray<Piece> content
    ) =>
        content.IsEmpty
            ? heading.SetItem(heading.Length - 1, heading[^1] with { HoldNext = Hold.None })
            : [.. heading, .. content];

    private static ImmutableArray<Piece> Grouped(
        ImmutableArray<Piece> pieces,
        Hold hold = Hold.Group
    ) =>
        [
            .. pieces.Select(
                (p, i) =>
                    i < pieces.Length - 1 && p.HoldNext < hold ? p with { HoldNext = hold } : p
            ),
        ];
}
