using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Tests.Locking;

/// <summary>From the record of a study to looks.csv, which everybody reads who has the report.</summary>
public sealed class LookRecordTests
{
    private const string Looks = "looks.csv";
    private static readonly DateTimeOffset s_at = new(2026, 4, 2, 14, 5, 0, TimeSpan.FromHours(2));

    [Fact]
    public void A_look_at_other_data_becomes_looks_csv_and_is_read_back_as_it_was()
    {
        var study = Read(With(Line("other data")));
        var look = Assert.Single(study.Inputs.Looks);
        var cell = Assert.Single(look.Cells);

        Assert.Equal(
            (1, s_at, "report", "other data"),
            (look.Number, look.At, look.Action, look.DataSha256)
        );
        Assert.Equal(Cell() with { Pairs = [] }, cell with { Pairs = [] });
        Assert.Equal(Cell().Pairs.AsEnumerable(), cell.Pairs.AsEnumerable());
        Assert.NotNull(study.Identity.HashOf(Looks));
        Assert.NotEqual(Read(GoodStudy.Bytes).Identity.InputDigest, study.Identity.InputDigest);
    }

    [Fact]
    public void The_canonical_files_alone_give_the_same_study()
    {
        var files = With(Line("other data"));
        var study = Read(files);
        var attached = StudyBytes.Of(
            new[] { "protocol.toml", "study.toml" }
                .Select(name => KeyValuePair.Create(name, files.Files[name]))
                .Concat(
                    study.Canonical.Files.Select(file => KeyValuePair.Create(file.Name, file.Bytes))
                )
        );

        Assert.True(StudyIntake.ReadCanonical(attached, false).TryGet(out var again));
        Assert.Equal(study.Identity.InputDigest, again.Identity.InputDigest);
        Assert.Equal(study.Identity.InputDigest, Read(attached).Identity.InputDigest);
    }

    [Fact]
    public void Looks_after_the_first_look_at_these_data_change_nothing()
    {
        var data = Read(GoodStudy.Bytes).Identity.DataSha256;

        Assert.Empty(Read(With(Line(data), Line("other data"), Line(data))).Inputs.Looks);
        Assert.Single(Read(With(Line("other data"), Line(data), Line("third"))).Inputs.Looks);
    }

    [Fact]
    public void Lines_without_a_look_or_that_cannot_be_read_are_passed_over() =>
        Assert.Equal(
            2,
            Read(
                With(Line("a"), Line(""), "{\"look\": 3}\n", "not json\n", Line("b"))
            ).Inputs.Looks.Length
        );

    [Theory]
    [InlineData("results.csv", "31.2", "31.4", true)]
    [InlineData("study.toml", "title = ", "title = \"x\" #", false)]
    [InlineData("protocol.toml", "version = \"2\"", "version = \"3\"", false)]
    public void Data_and_decisions_make_the_fingerprint(
        string file,
        string from,
        string to,
        bool changes
    ) =>
        Assert.Equal(
            changes,
            Read(GoodStudy.Bytes).Identity.DataSha256
                != Read(GoodStudy.Edited(file, from, to)).Identity.DataSha256
        );

    [Theory]
    [InlineData("specimens.csv")]
    [InlineData("results.csv")]
    public void The_same_rows_in_another_order_are_the_same_data(string name)
    {
        var lines = GoodStudy.Text(GoodStudy.Bytes, name).TrimEnd('\n').Split('\n');
        var reversed = string.Join('\n', lines.Skip(1).Reverse().Prepend(lines[0])) + "\n";
        var (data, study) = (
            Read(GoodStudy.Bytes),
            Read(GoodStudy.Bytes.With(name, GoodStudy.Utf8(reversed)))
        );

        Assert.NotEqual(data.Identity.InputDigest, study.Identity.InputDigest);
        Assert.Equal(data.Identity.DataSha256, study.Identity.DataSha256);
    }

    [Fact]
    public void The_stated_end_of_a_collection_changes_the_fingerprint()
    {
        var facts = Encoding.UTF8.GetString(GoodStudy.Bytes.Files["study.toml"].Span);
        var study = Read(
            GoodStudy.Bytes.With(
                "study.toml",
                GoodStudy.Utf8(
                    facts.Replace(
                        "format = 1",
                        "format = 1\nended_early = { reason = \"r\", by = \"P1\", on = \"2026-12-31\" }",
                        StringComparison.Ordinal
                    )
                )
            )
        );

        Assert.Equal(new DateOnly(2026, 12, 31), study.Inputs.Facts.EndedEarly?.On);
        Assert.NotEqual(Read(GoodStudy.Bytes).Identity.DataSha256, study.Identity.DataSha256);
    }

    private static LookedAtCell Cell() =>
        new(
            new CellKey("aPTT", "none", "wb-rt", new TimePoint(TimeSpan.FromHours(6))),
            40,
            30,
            CollectionState.Incomplete,
            29,
            Conclusion.Inconclusive,
            [
                .. Enumerable
                    .Range(1, 450)
                    .Select(i => new LookedAtPair(
                        string.Create(CultureInfo.InvariantCulture, $"S:{i}"),
                        i % 9 == 0 ? null : (uint)i
                    )),
            ]
        );

    private static string Line(string data) =>
        Encoding.UTF8.GetString(
            StudyRecord
                .Next(
                    default,
                    new RecordEntry(RecordAction.Report, s_at, "LS1", "t", [], [])
                    {
                        DataSha256 = data,
                        Look = data.Length == 0 ? [] : [Cell()],
                    }
                )
                .Span
        );

    private static StudyBytes With(params string[] lines) =>
        GoodStudy.Bytes.With(StudyRecord.Name, GoodStudy.Utf8(string.Concat(lines)));

    private static StudyIntakeResult Read(StudyBytes files)
    {
        var outcome = StudyIntake.Read(files);
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        return study;
    }
}
