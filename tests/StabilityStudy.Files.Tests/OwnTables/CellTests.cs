using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Tests.OwnTables;

public sealed class CellTests
{
    [Theory]
    [InlineData(31.4, "General", "31.4", "31.4")]
    [InlineData(31.400000000000002, "General", "31.4", "31.4")]
    [InlineData(29, "0.0", "29", "29.0")]
    [InlineData(31.4499, "0.0", "31.4499", "31.4")]
    [InlineData(31.45, "0.0", "31.45", "31.5")]
    [InlineData(1031.25, "#,##0.00", "1031.25", "1031.25")]
    [InlineData(7, "000", "7", "007")]
    [InlineData(2.5, "0.0##", "2.5", "2.5")]
    [InlineData(2.5, "0.00_ ", "2.5", "2.50")]
    [InlineData(-1.5, "0.0;-0.0", "-1.5", "-1.5")]
    public void A_number_has_what_it_stores_and_what_it_shows(
        double number,
        string format,
        string stored,
        string shown
    )
    {
        Assert.Equal(stored, NumberFormat.Stored(number));
        Assert.Equal(shown, NumberFormat.Of(format, number)!.Value.Shown(stored));
    }

    [Theory]
    [InlineData("0%")]
    [InlineData("\"<\"0.0")]
    [InlineData("0.0,")]
    [InlineData("0.0\" s\"")]
    [InlineData("[<20]\"<20\";0.0")]
    [InlineData("0.00E+00")]
    [InlineData("# ?/?")]
    [InlineData("yyyy")]
    [InlineData("\\<0.0")]
    public void A_format_that_shows_more_than_digits_is_not_understood(string format) =>
        Assert.Null(NumberFormat.Of(format, 1.5));

    [Fact]
    public void A_format_that_hides_the_sign_is_not_understood() =>
        Assert.Null(NumberFormat.Of("0.0;0.0", -1.5));

    [Theory]
    [InlineData("{specimen}-{tube}", "N-001-A", "N-001", "A")]
    [InlineData("{specimen}{letter}", "N001B", "N001", "B")]
    [InlineData("{specimen}.{tube}", "0007.12", "0007", "12")]
    [InlineData("X{specimen}/{digit}", "X12/3", "12", "3")]
    public void A_code_is_split_by_its_pattern(
        string pattern,
        string code,
        string specimen,
        string tube
    ) => Assert.Equal((specimen, tube), new TubePattern(pattern).Split(code));

    [Theory]
    [InlineData("{specimen}-{tube}", "N001")]
    [InlineData("{specimen}-{tube}", "N001-")]
    [InlineData("{specimen}{letter}", "N0012")]
    [InlineData("X{specimen}/{digit}", "12/3")]
    public void A_code_of_another_form_is_not_split(string pattern, string code) =>
        Assert.Null(new TubePattern(pattern).Split(code));

    [Theory]
    [InlineData("{specimen}{tube}")]
    [InlineData("{specimen}")]
    [InlineData("{tube}-{specimen}")]
    [InlineData("{specimen}-{tube}-{letter}")]
    [InlineData("{specimen}-{nobody}{tube}")]
    public void A_pattern_that_does_not_tell_both_apart_is_refused(string pattern) =>
        Assert.False(new TubePattern(pattern).IsSound);

    // Two digits of a year mean the one of a hundred years that begin with the stated one.
    [Theory]
    [InlineData("02.03.26 07:50", "dd.MM.yy HH:mm", 2000, "2026-03-02T07:50:00")]
    [InlineData("3/2/26 1:05 PM", "M/d/yy h:mm tt", 2000, "2026-03-02T13:05:00")]
    [InlineData("3/2/26 12:05 AM", "M/d/yy h:mm tt", 2000, "2026-03-02T00:05:00")]
    [InlineData("02.03.60 07:50", "dd.MM.yy HH:mm", 1950, "1960-03-02T07:50:00")]
    [InlineData(
        "2026-03-02 07:50 +02:00",
        "yyyy-MM-dd HH:mm zzz",
        null,
        "2026-03-02T07:50:00+02:00"
    )]
    [InlineData("2026-03-02 07:50:31.250", "yyyy-MM-dd HH:mm:ss.fff", null, "2026-03-02T07:50:31")]
    [InlineData("31.02.26 07:50", "dd.MM.yy HH:mm", 2000, null)]
    public void Times_are_read_by_their_form(
        string text,
        string format,
        int? century,
        string? read
    ) => Assert.Equal(read, TimeForms.Parse(text, format, century));

    [Theory]
    [InlineData("aPTT (s)", "s")]
    [InlineData("aPTT [sec]", "sec")]
    [InlineData("anti-Xa ([IU]/mL)", "[IU]/mL")]
    [InlineData("D-dimer (mg/L (FEU))", "mg/L (FEU)")]
    [InlineData("aPTT", "")]
    public void The_unit_stands_in_brackets_behind_the_name(string header, string unit) =>
        Assert.Equal(unit, TableHeader.UnitIn(header));
}
