using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Tests;

public sealed class WordTests
{
    [Theory]
    [InlineData("7.5", "7.5")]
    [InlineData("7.50", "7.50")]
    [InlineData("-0.25", "-0.25")]
    [InlineData("007", "7")]
    [InlineData("900000000", "900000000")]
    [InlineData("0.123456789", "0.123456789")]
    public void A_number_keeps_its_decimals(string text, string written)
    {
        Assert.Null(StrictNumber.Read(text, out var number));
        Assert.Equal(written, number.ToString(CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("2026-03-02T07:42:05+01:00")]
    [InlineData("2000-01-01T00:00:00+00:00")]
    [InlineData("2026-12-31T23:59:59-03:30")]
    [InlineData("2024-02-29T12:00:09+14:00")]
    [InlineData("2026-03-02T00:10:00-00:30")]
    public void A_time_has_the_same_form_as_bytes_and_as_text(string text)
    {
        var time = DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
        Span<byte> bytes = stackalloc byte[StrictTime.WrittenLength];

        Assert.Equal(StrictTime.WrittenLength, StrictTime.Write(time, bytes));
        Assert.Equal(text, System.Text.Encoding.UTF8.GetString(bytes));
        Assert.Equal(text, StrictTime.Write(time));
    }

    [Theory]
    [InlineData("2,5")]
    [InlineData("NaN")]
    [InlineData("1e999")]
    [InlineData("1 000")]
    [InlineData("+5")]
    [InlineData("２．５")]
    [InlineData("٣")]
    [InlineData(".5")]
    [InlineData("5.")]
    [InlineData("--5")]
    [InlineData("-")]
    [InlineData("")]
    [InlineData("1.2.3")]
    [InlineData("0.1234567890")]
    [InlineData("900000001")]
    public void What_is_not_a_plain_number_is_refused_with_advice(string text)
    {
        Assert.StartsWith("write ", StrictNumber.Read(text, out _), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-02-28T14:05", "2026-02-28T14:05:00+00:00")]
    [InlineData("2026-02-28T14:05:09Z", "2026-02-28T14:05:09+00:00")]
    [InlineData("2024-02-29T00:00-05:30", "2024-02-29T00:00:00-05:30")]
    public void A_time_is_written_in_one_form(string text, string written)
    {
        var time = StrictTime.Read(text);

        Assert.NotNull(time);
        Assert.Equal(
            written,
            StrictTime.Write(
                new DateTimeOffset(time.Value.Local, time.Value.Offset ?? TimeSpan.Zero)
            )
        );
    }

    [Theory]
    [InlineData("2026-02-29T14:05")]
    [InlineData("2026-02-28T14:60")]
    [InlineData("2026-02-28T14:05:60")]
    [InlineData("2026-02-28T1405")]
    [InlineData("2026-02-28t14:05")]
    [InlineData("2026-02-28T14:05 Z")]
    [InlineData("2026-02-28T14:05z")]
    [InlineData("2026-02-28T14:05+1:00")]
    [InlineData("2026-02-28T14:05+14:01")]
    [InlineData("2026-02-28T14:05:30.5")]
    [InlineData("0001-01-01T00:00+14:00")]
    [InlineData("26-02-28T14:05")]
    public void What_is_not_a_time_is_refused(string text)
    {
        Assert.Null(StrictTime.Read(text));
    }

    // Distances counted by hand.
    [Theory]
    [InlineData("verison", "version", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("ca", "abc", 3)]
    [InlineData("same", "same", 0)]
    public void The_distance_counts_insertions_deletions_replacements_and_swaps(
        string from,
        string to,
        int distance
    )
    {
        Assert.Equal(distance, NearestWord.Distance(from, to));
        Assert.Equal(distance, NearestWord.Distance(to, from));
    }

    [Fact]
    public void A_word_far_from_all_others_has_no_nearest()
    {
        Assert.Null(NearestWord.Find("colour", ["unit", "name"]));
    }

    [Theory]
    [InlineData("1961-04-23", "a birth date")]
    [InlineData("23.04.1961", "a birth date")]
    [InlineData("4/23/1961", "a birth date")]
    [InlineData("Smith, John", "a name")]
    [InlineData("Smith,J", "a name")]
    [InlineData("Anna-Maria Müller", "a name")]
    [InlineData("MÜLLER, ANNA", "a name")]
    [InlineData("John_Smith", "a name")]
    [InlineData("MRN1234567", "a record number")]
    [InlineData("230461-123", "a record number")]
    [InlineData("123-45-6789", "a record number")]
    public void A_code_that_tells_who_a_person_is_is_recognized(string code, string shape)
    {
        Assert.Equal(shape, IdentityShape.Of(code));
    }

    [Theory]
    [InlineData("N-001")]
    [InlineData("N-001-A")]
    [InlineData("S001")]
    [InlineData("WB-2026-0001")]
    [InlineData("blue tube 1")]
    [InlineData("UFH 12")]
    [InlineData("Tube A")]
    [InlineData("123456")]
    public void A_study_code_is_none(string code)
    {
        Assert.Null(IdentityShape.Of(code));
    }

    // sha256sum (GNU coreutils) of the two lines "a.csv <hash of abc>" and "b.csv <hash of nothing>".
    [Fact]
    public void The_digest_is_that_of_the_sorted_lines()
    {
        var abc = InputDigest.Sha256("abc"u8);
        var nothing = InputDigest.Sha256([]);

        Assert.Equal(
            "86f93d71e1c6c5ead604f7cd7c6abd555b60ab1659a452ab13c0c094efe4e468",
            InputDigest.Compute([new("b.csv", nothing), new("a.csv", abc)])
        );
        Assert.Throws<ArgumentException>(() =>
            InputDigest.Compute([new("a.csv", abc), new("a.csv", nothing)])
        );
    }
}
