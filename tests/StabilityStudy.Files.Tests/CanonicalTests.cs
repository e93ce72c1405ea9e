using System.Security.Cryptography;
using System.Text;
using CsCheck;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

public sealed class CanonicalTests
{
    private static readonly StudyBytes Example = ExampleStudyTests.Read(
        Path.Combine(RepositoryFile.Root, "example-studies", "aptt-room-temperature")
    );

    [Fact]
    public void The_canonical_form_of_the_good_study_is_this()
    {
        var canonical = Read(GoodStudy.Bytes).Canonical.Files;

        Assert.Equal(
            """"
            specimen,tube,subject,group,storage,draw_position,collected_at,received_at,spun_at,separated_at,frozen_at,thawed_at,fill_percent,inversions,hematocrit_percent,hemolysis,clot,device,origin,source_row
            S-001,A,X-01,none,wb-rt,1,2026-03-02T07:00:00+01:00,2026-03-02T07:20:00+01:00,2026-03-02T07:30:00+01:00,,,,95.0,5,41.5,none,no,straight needle,native,2
            S-001,B,X-01,none,wb-rt,2,2026-03-02T07:00:00+01:00,2026-03-02T07:20:00+01:00,2026-03-02T12:40:00+01:00,,,,97,5,41.5,slight,no,"needle, ""short""",native,3
            S-002,A,X-02,none,wb-rt,1,2026-03-03T07:00:10+01:00,,2026-03-03T06:30:00+00:00,,,,,,,,,,,4
            S-002,B,X-02,none,wb-rt,2,2026-03-03T07:00:10+01:00,,,,,,,,,,,,,5

            """",
            Encoding.UTF8.GetString(canonical[0].Bytes.Span)
        );
        Assert.Equal(
            """"
            specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,calibration,operator,flag,remark,source_row
            S-001,A,aPTT,baseline,1,2026-03-02T07:50:00+01:00,31.2,s,R1,A1,L1,C1,P1,,,2
            S-001,B,aPTT,6 h,1,2026-03-02T13:05:00+01:00,32.5,s,R2,A1,L1,C1,P1,,,3
            S-002,A,aPTT,baseline,1,2026-03-03T07:55:00+01:00,>180,s,R3,A1,L1,C1,P1,ERROR,"above, the limit",4
            S-002,B,aPTT,8 h,1,,QNS,,,,,,,,,5

            """",
            Encoding.UTF8.GetString(canonical[1].Bytes.Span)
        );
        Assert.Equal(
            """"
            control,analyte,run,tested_at,result,unit,target,allowed_low,allowed_high,kind,source_row
            BP,aPTT,R2,2026-03-02T13:01:00+01:00,45.2,s,,,,bridging plasma,4
            N1,aPTT,R1,2026-03-02T07:40:00+01:00,30.1,s,30.0,28,32.0,control,2
            N1,aPTT,R2,2026-03-02T13:00:00+01:00,30.4,s,30.0,28,32.0,control,3
            N1,aPTT,R3,2026-03-03T07:40:00+01:00,NA,,30.0,28,32.0,control,5

            """",
            Encoding.UTF8.GetString(canonical[2].Bytes.Span)
        );
    }

    [Fact]
    public void The_digest_can_be_computed_again_from_its_published_recipe()
    {
        var study = Read(GoodStudy.Bytes);
        var hashes = study
            .Canonical.Files.Select(file => (file.Name, Hash(file.Bytes.Span)))
            .Append(("protocol.toml", Hash(GoodStudy.Bytes.Files["protocol.toml"].Span)))
            .Append(("study.toml", Hash(GoodStudy.Bytes.Files["study.toml"].Span)))
            .OrderBy(file => file.Item1, StringComparer.Ordinal);
        var recipe = string.Concat(hashes.Select(file => $"{file.Item1} {file.Item2}\n"));

        Assert.Equal(Hash(Encoding.UTF8.GetBytes(recipe)), study.Identity.InputDigest);
        Assert.StartsWith("controls.csv ", recipe, StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_read_again_from_the_attachments_of_its_report_has_the_same_digest()
    {
        var renamed = GoodStudy
            .Edited("study.toml", "results = \"results.csv\"", "results = \"export 1.csv\"")
            .With("export 1.csv", GoodStudy.Utf8(Reversed(GoodStudy.Results)));
        var first = Read(new StudyBytes(renamed.Files.Remove("results.csv")));
        var attached = first
            .Canonical.Files.Select(file => KeyValuePair.Create(file.Name, file.Bytes))
            .Append(KeyValuePair.Create("protocol.toml", renamed.Files["protocol.toml"]))
            .Append(KeyValuePair.Create("study.toml", renamed.Files["study.toml"]));

        var again = Read(StudyBytes.Of(attached));

        Assert.Equal(first.Identity.InputDigest, again.Identity.InputDigest);
        Assert.Equal(first.Inputs.Results, again.Inputs.Results);
        Assert.Equal([5, 4, 3, 2], again.Inputs.Results.Select(row => row.SourceRow));
        Assert.Equal(first.Inputs.Controls, again.Inputs.Controls);
    }

    [Fact]
    public void Reading_canonical_files_gives_the_same_study_and_the_same_files()
    {
        var first = Read(Example);
        var files = first.Canonical.Files.Aggregate(
            Example,
            (all, file) => all.With(file.Name, file.Bytes)
        );

        Assert.True(
            StudyIntake.ReadCanonical(files, isOfOtherVersion: false).TryGet(out var second)
        );

        Assert.Equal(first.Identity.InputDigest, second.Identity.InputDigest);
        Assert.Equal(Hashes(first), Hashes(second));
        Assert.Equal(first.Inputs.Tubes, second.Inputs.Tubes);
        Assert.Equal(first.Inputs.Results, second.Inputs.Results);
        Assert.Equal(first.Inputs.Controls, second.Inputs.Controls);
        Assert.Equal(first.LastingQueries, second.LastingQueries);
    }

    [Fact]
    public void A_canonical_file_with_rows_in_another_order_is_not_canonical()
    {
        var canonical = Read(GoodStudy.Bytes).Canonical.Files;
        var lines = Encoding.UTF8.GetString(canonical[1].Bytes.Span).Split('\n');
        (lines[1], lines[2]) = (lines[2], lines[1]);
        var files = GoodStudy
            .Bytes.With(canonical[0].Name, canonical[0].Bytes)
            .With(canonical[1].Name, GoodStudy.Utf8(string.Join('\n', lines)))
            .With(canonical[2].Name, canonical[2].Bytes);

        var query = Assert.Single(
            StudyIntake.ReadCanonical(files, isOfOtherVersion: false).Queries
        );

        Assert.Equal(("not-canonical", "results.csv"), (query.Code, query.Source.File));
    }

    [Fact]
    public void Queries_about_unused_columns_do_not_last()
    {
        var outcome = StudyIntake.Read(
            GoodStudy.Edited("results.csv", ",flag,remark", ",flag,batch number")
        );

        Assert.True(outcome.TryGet(out var study));
        Assert.Equal("column-not-used", Assert.Single(outcome.Queries).Code);
        Assert.Empty(study.LastingQueries);
    }

    [Theory]
    [InlineData("specimens.csv")]
    [InlineData("results.csv")]
    public void The_order_of_rows_and_columns_changes_nothing_but_the_source_row(string name)
    {
        var expected = WithoutSourceRow(Read(Example));

        Gen.Int[0, 1_000_000]
            .Sample(
                seed =>
                {
                    var files = Example.With(
                        name,
                        GoodStudy.Utf8(Shuffled(GoodStudy.Text(Example, name), new Random(seed)))
                    );
                    Assert.Equal(expected, WithoutSourceRow(Read(files)));
                },
                iter: 10,
                threads: 1
            );
    }

    [Fact]
    public void A_byte_order_mark_and_other_line_ends_change_nothing()
    {
        var files = GoodStudy.Bytes.Files.Keys.Aggregate(
            GoodStudy.Bytes,
            (all, name) =>
                all.With(
                    name,
                    GoodStudy.Utf8(
                        "\uFEFF"
                            + GoodStudy
                                .Text(GoodStudy.Bytes, name)
                                .Replace("\n", "\r\n", StringComparison.Ordinal)
                    )
                )
        );

        Assert.Equal(Hashes(Read(GoodStudy.Bytes)), Hashes(Read(files)));
    }

    [Fact]
    public void A_line_break_inside_a_remark_is_kept_as_a_line_feed()
    {
        var unix = Read(GoodStudy.Edited("results.csv", "above, the", "above\nthe"));
        var windows = Read(GoodStudy.Edited("results.csv", "above, the", "above\r\nthe"));

        Assert.Equal(Hashes(unix), Hashes(windows));
        Assert.Equal("above\nthe limit", windows.Inputs.Results[2].Remark);
    }

    [Fact]
    public void Empty_lines_are_skipped_and_still_counted()
    {
        var study = Read(GoodStudy.Edited("results.csv", "S-001,B", "\n\n,,,,,,,,,,,,,,\nS-001,B"));

        Assert.Equal([2, 6, 7, 8], study.Inputs.Results.Select(row => row.SourceRow));
    }

    [Fact]
    public void Data_files_may_have_other_names()
    {
        var files = GoodStudy
            .Edited("study.toml", "results = \"results.csv\"", "results = \"export 1.csv\"")
            .With("export 1.csv", GoodStudy.Utf8(GoodStudy.Results));

        var study = Read(files);

        Assert.Equal(
            ["specimens.csv", "export 1.csv", "controls.csv"],
            study.Identity.RawFiles.Select(file => file.Name)
        );
        Assert.Equal(Hashes(Read(GoodStudy.Bytes)), Hashes(study));
    }

    internal static StudyIntakeResult Read(StudyBytes files)
    {
        var outcome = StudyIntake.Read(files);
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        return study;
    }

    private static string[] Hashes(StudyIntakeResult study) =>
        [.. study.Canonical.Files.Select(file => file.Sha256)];

    private static string WithoutSourceRow(StudyIntakeResult study) =>
        string.Concat(
            study
                .Canonical.Files.SelectMany(file =>
                    Encoding.UTF8.GetString(file.Bytes.Span).Split('\n')
                )
                .Select(line => line[..(line.LastIndexOf(',') + 1)] + "\n")
        );

    private static string Hash(ReadOnlySpan<byte> bytes) =>
        Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static string Reversed(string csv)
    {
        var lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return string.Join('\n', lines.Skip(1).Reverse().Prepend(lines[0])) + "\n";
    }

    private static string Shuffled(string csv, Random random)
    {
        var lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.DoesNotContain(lines, line => line.Contains('"', StringComparison.Ordinal));
        var order = Enumerable.Range(0, lines[0].Split(',').Length).ToArray();
        random.Shuffle(order);
        random.Shuffle(lines.AsSpan(1));
        return string.Concat(
            lines.Select(line =>
            {
                var fields = line.Split(',');
                return string.Join(',', order.Select(i => fields[i])) + "\n";
            })
        );
    }
}
