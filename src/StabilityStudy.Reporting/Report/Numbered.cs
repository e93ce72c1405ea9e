namespace StabilityStudy.Reporting.Report;

/// <summary>Numbers the figures and tables behind page 1, whose table and figure are the first.</summary>
internal static class Numbered
{
    /// <summary>The same sections with numbers in the captions, in the order in which they are read.</summary>
    public static ImmutableArray<Section> Of(ImmutableArray<Section> sections)
    {
        var (tables, figures) = (1, 1);
        return [.. sections.Select(section => section with { Blocks = Blocks(section.Blocks) })];

        ImmutableArray<Block> Blocks(ImmutableArray<Block> blocks) => [.. blocks.Select(One)];

        Block One(Block block) =>
            block switch
            {
                Table table => table.WithCaption(
                    $"Table {NumberText.Count(++tables)}. {table.Caption}"
                ),
                KeyMessage { IsCaption: true } caption => caption with
                {
                    Subject = $"Figure {NumberText.Count(++figures)}. {caption.Subject}",
                },
                KeepTogether kept => kept with { Blocks = Blocks(kept.Blocks) },
                _ => block,
            };
    }
}
