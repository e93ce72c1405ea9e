using StabilityStudy.Core.Bench;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Columns of the draw sheet and what stands in them.</summary>
internal static class DrawColumns
{
    private const string AtTheAnalyzer = "At the analyzer";

    /// <summary>The columns; on the narrower paper what is only room gives way.</summary>
    public static ImmutableArray<SheetColumn> Of(BenchStudy study, bool isNarrow)
    {
        var plasmaOff = HasPlasmaTakenOff(study);
        var specimen = Mm(isNarrow ? 44.5 : 47);
        var unused = (study.IsDrawn ? 0 : Mm(12 + 13.5 + 11 + 8)) - (plasmaOff ? Mm(18) : 0);
        return
        [
            new("Specimen", specimen + unused),
            new(study.IsPortions ? "Portion" : "Tube", Mm(25)),
            .. study.IsDrawn
                ? ImmutableArray.Create<SheetColumn>(
                    new("Draw", Mm(12)),
                    new("Fill,\n%", Mm(13.5)) { Part = "At the draw" },
                    new(
                        study.Protocol.Draw is { } draw
                            ? "Invert\n" + PlannedHandling.Inversions(draw)
                            : "Inver-\nsions",
                        Mm(11)
                    ),
                    new("Clot", Mm(8))
                )
                : [],
            new("Start the spin\nbetween", Mm(isNarrow ? 28 : 31)) { Part = AtTheAnalyzer },
            new("Spin\nbegan", Mm(isNarrow ? 16 : 18.5)),
            .. plasmaOff ? ImmutableArray.Create(new SheetColumn("Plasma\ntaken off", Mm(18))) : [],
            new("Test\nbetween", Mm(isNarrow ? 28.5 : 30)) { IsStrong = true },
            new("Tested", Mm(isNarrow ? 16 : 18)),
            new("Run\norder", Mm(isNarrow ? 12.5 : 14)),
            new("Hemol-\nysis", Mm(isNarrow ? 16 : 17)),
            new("Clot", Mm(8)),
            new("Initials", Mm(isNarrow ? 12.4 : 16)),
        ];
    }

    /// <summary>The cells of a tube, behind that of its specimen.</summary>
    public static IEnumerable<SheetCell?> Cells(BenchStudy study, BenchTube tube)
    {
        var several = study.Protocol.Storages.Length > 1 && tube.Storage is not null;
        yield return SheetCell.Row(
            (0, SheetCell.Of(tube.Letter, SheetText.TubeCode)),
            (
                Mm(tube.Letter.Length > 1 ? 6.5 : 4.6),
                SheetCell.Time(
                    $"{tube.Occasion}",
                    !tube.Occasion.IsBaseline,
                    Mm(tube.Letter.Length > 1 ? 16.5 : 17.6)
                )
            )
        ) with
        {
            IsHead = true,
        };
        if (study.IsDrawn)
        {
            yield return SheetCell.Of(
                tube.DrawPosition is { } position ? BenchWords.Ordinal(position) : "",
                SheetText.TubeCode
            );
            yield return SheetCell.Number;
            yield return SheetCell.Number;
            yield return SheetCell.Tick;
        }

        yield return SheetCell.Of(BenchWords.Spin(tube.Spin), SheetText.Cell);
        var isSpun = tube.Spin.Moment != SpinMoment.Already;
        yield return isSpun ? SheetCell.Clock : SheetCell.Of("–", SheetText.Cell);
        if (HasPlasmaTakenOff(study))
        {
            yield return isSpun ? SheetCell.Clock : SheetCell.Of("–", SheetText.Cell);
        }

        yield return SheetCell.Of(
            BenchWords.Test(tube) + (several ? "\n" + tube.Storage?.Id : ""),
            SheetText.StrongCell
        );
        yield return SheetCell.Clock;
        yield return tube.Occasion.IsBaseline
            ? SheetCell.Of("at once", SheetText.Small, isCentered: true)
            : SheetCell.Of(
                tube.RunOrder.ToString(CultureInfo.InvariantCulture),
                SheetText.TubeCode,
                isCentered: true
            );
        yield return SheetCell.Grades;
        yield return SheetCell.Tick;
        yield return SheetCell.Line;
    }

    private static bool HasPlasmaTakenOff(BenchStudy study) =>
        !study.IsThawing
        && study.Protocol.Storages.Any(storage => storage.State == StorageState.SeparatedPlasma);
}
