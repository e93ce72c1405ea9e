using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Tests.OwnTables;

public sealed class UnitTests
{
    // One gram in a liter is a hundred milligrams in a deciliter; a minute has sixty seconds.
    [Theory]
    [InlineData("mg/dL", "g/L", "310", "3.10")]
    [InlineData("g/L", "mg/dL", "3.1", "310")]
    [InlineData("g/L", "mg/dL", "3.125", "312.5")]
    [InlineData("mg/dL", "g/L", "<27", "<0.27")]
    [InlineData("min", "s", "1.5", "90")]
    [InlineData("ms", "s", "31400", "31.400")]
    [InlineData("ng/mL FEU", "mg/L{FEU}", "500", "0.500")]
    [InlineData("ug/mL FEU", "mg/L{FEU}", "0.50", "0.50")]
    [InlineData("[IU]/dL", "[IU]/mL", "45", "0.45")]
    [InlineData("g/L", "mg/dL", "CLOT", "CLOT")]
    [InlineData("g/L", "mg/dL", "-0.5", "-50")]
    public void Results_are_converted_exactly(
        string from,
        string to,
        string read,
        string converted
    ) => Assert.Equal(converted, UnitConversion.Of(from, to)!.Apply(read));

    [Theory]
    [InlineData("mg/dL", "[IU]/mL")]
    [InlineData("ng/mL{FEU}", "ng/mL{DDU}")]
    [InlineData("ng/mL", "ng/mL{FEU}")]
    [InlineData("s", "{INR}")]
    [InlineData("s", "nonsense")]
    [InlineData("%", "[IU]/dL")]
    public void Nothing_converts_one_quantity_into_another(string from, string to) =>
        Assert.Null(UnitConversion.Of(from, to));

    // A second has no finite share of a minute: such a result is refused, not rounded.
    [Fact]
    public void A_result_without_an_exact_form_is_no_number_any_more()
    {
        var conversion = UnitConversion.Of("s", "min")!;

        Assert.Equal("0.5", conversion.Apply("30"));
        Assert.Equal("31 s", conversion.Apply("31"));
    }

    [Fact]
    public void No_spelling_stands_for_two_units()
    {
        var spellings = UnitTable.All.SelectMany(unit => unit.Spellings.Add(unit.Name)).ToArray();

        Assert.Empty(
            spellings
                .GroupBy(text => text)
                .Where(group => group.Count() > 1)
                .Select(group => group.Key)
        );
    }

    [Fact]
    public void Results_controls_and_a_stated_unit_are_converted_together()
    {
        var study = GoodStudy
            .Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + Convert))
            .With(
                "results.csv",
                Milliseconds(
                    "results.csv",
                    "31.2,s",
                    "31200,ms",
                    "32.5,s",
                    "32500,ms",
                    ">180,s",
                    ">180000,ms"
                )
            )
            .With(
                "controls.csv",
                Milliseconds(
                    "controls.csv",
                    "30.1,s,30.0,28,32.0",
                    "30100,ms,30000,28000,32000",
                    "30.4,s,30.0,28,32.0",
                    "30400,ms,30000,28000,32000",
                    "45.2,s",
                    "45200,ms",
                    "NA,,30.0,28,32.0",
                    "NA,ms,30000,28000,32000"
                )
            );

        var inputs = CanonicalTests.Read(study).Inputs;

        Assert.Equal(
            ["31.200", "32.500", ">180.000", "QNS"],
            inputs.Results.Select(row => row.Result.Text)
        );
        Assert.All(
            inputs.Results.Where(row => row.Result.Text != "QNS"),
            row => Assert.Equal("s", row.Unit)
        );
        Assert.All(
            inputs.Controls.Where(row => row.AllowedLow is not null),
            row => Assert.Equal((28m, 32m, 30m), (row.AllowedLow, row.AllowedHigh, row.Target))
        );
        Assert.Contains(
            inputs.Facts.OwnFiles[0].Words,
            word => word is { Written: "ms", ReadAs: "s (results converted)" }
        );
    }

    private const string Convert =
        "\n[read]\nresults = { convert = { ms = \"s\" } }\ncontrols = { convert = { ms = \"s\" } }\n";

    private static ReadOnlyMemory<byte> Milliseconds(string file, params string[] pairs)
    {
        var text = GoodStudy.Text(GoodStudy.Bytes, file);
        for (var i = 0; i < pairs.Length; i += 2)
        {
            Assert.Contains(pairs[i], text, StringComparison.Ordinal);
            text = text.Replace(pairs[i], pairs[i + 1], StringComparison.Ordinal);
        }

        return GoodStudy.Utf8(text);
    }
}
