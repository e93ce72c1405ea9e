using System.Text;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Tests;

/// <summary>What is remembered while rows are read is never another text's.</summary>
public sealed class KnownTextsTests
{
    [Fact]
    public void A_text_is_found_with_its_own_meaning_or_not_at_all()
    {
        var known = new KnownTexts<string>(ResultColumns.Run);
        var found = 0;
        for (var number = 0; number < 20_000; number++)
        {
            known.Add(Bytes(number), Text(number));
            Assert.True(known.TryFind(Bytes(number), out var last));
            Assert.Equal(Text(number), last);
        }

        for (var number = 0; number < 40_000; number++)
        {
            if (known.TryFind(Bytes(number), out var meaning))
            {
                Assert.Equal(Text(number), meaning);
                found++;
            }
        }

        Assert.InRange(found, 1, 20_000);
    }

    [Fact]
    public void Few_texts_are_all_found_again()
    {
        var known = new KnownTexts<int?>(ResultColumns.Replicate);
        for (var number = 1; number <= 9; number++)
        {
            known.Add(Bytes(number), number);
        }

        for (var number = 1; number <= 9; number++)
        {
            Assert.True(known.TryFind(Bytes(number), out var meaning));
            Assert.Equal(number, meaning);
        }

        Assert.False(known.TryFind(Bytes(10), out _));
    }

    [Fact]
    public void Rows_with_the_same_conditions_share_them_and_no_others_do()
    {
        var shared = new SharedConditions();
        var first = Of(shared, run: "R1", flag: "");
        var flagged = Of(shared, run: "R1", flag: "E7");

        Assert.Same(first, Of(shared, run: "R1", flag: ""));
        Assert.Equal("E7", flagged.Flag);
        Assert.Equal(first with { Flag = "E7" }, flagged);
        Assert.Equal("R2", Of(shared, run: "R2", flag: "").Run);
        Assert.Equal(
            FlagMeaning.Harmless,
            Of(shared, run: "R1", flag: "", FlagMeaning.Harmless).FlagMeaning
        );
    }

    [Fact]
    public void Rows_that_differ_in_one_of_their_conditions_do_not_share_them()
    {
        var shared = new SharedConditions();
        string[] usual = ["s", "R1", "A1", "L1", "C1", "P1", "", ""];
        for (var i = 0; i < usual.Length; i++)
        {
            OfTexts(shared, usual);
            string[] other = [.. usual];
            other[i] = "other";

            var conditions = OfTexts(shared, other);

            Assert.Equal<IEnumerable<string>>(
                other,
                [
                    conditions.Unit,
                    conditions.Run,
                    conditions.Instrument,
                    conditions.Lot,
                    conditions.Calibration,
                    conditions.Operator,
                    conditions.Remark,
                    conditions.Flag,
                ]
            );
        }
    }

    private static TestConditions Of(
        SharedConditions shared,
        string run,
        string flag,
        FlagMeaning meaning = FlagMeaning.Failed
    ) => shared.Of("aPTT", "s", run, "A1", "L1", "C1", "P1", "", (flag, meaning));

    private static TestConditions OfTexts(SharedConditions shared, string[] texts) =>
        shared.Of(
            "aPTT",
            texts[0],
            texts[1],
            texts[2],
            texts[3],
            texts[4],
            texts[5],
            texts[6],
            (texts[7], FlagMeaning.Failed)
        );

    private static byte[] Bytes(int number) => Encoding.UTF8.GetBytes(Text(number));

    private static string Text(int number) =>
        number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
