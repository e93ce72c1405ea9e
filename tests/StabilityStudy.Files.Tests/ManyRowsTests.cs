using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>What is done side by side for many rows gives what it gives for few.</summary>
public sealed class ManyRowsTests
{
    private const int Rows = 30_011;

    private static readonly ImmutableArray<ResultRow> s_rows = Results();

    [Fact]
    public void Lines_that_are_written_side_by_side_stand_in_the_order_of_the_rows()
    {
        var whole = Write(s_rows);
        var text = Encoding.UTF8.GetString(whole.Bytes.Span);
        var (header, lines) = (text[..(text.IndexOf('\n') + 1)], new StringBuilder());
        foreach (var few in s_rows.Chunk(1000))
        {
            lines.Append(Encoding.UTF8.GetString(Write([.. few]).Bytes.Span)[header.Length..]);
        }

        Assert.Equal(header + lines, text);
    }

    [Fact]
    public void The_hashes_are_those_of_the_text_and_of_the_text_without_its_last_column()
    {
        var csv = Write(s_rows);
        var text = Encoding.UTF8.GetString(csv.Bytes.Span);
        var data = string.Concat(
            text.Split('\n')[..^1].Select(line => line[..line.LastIndexOf(',')] + "\n")
        );

        Assert.Equal(Rows + 1, text.Count(character => character == '\n'));
        Assert.Equal(InputDigest.Sha256(csv.Bytes.Span), csv.Sha256);
        Assert.Equal(InputDigest.Sha256(Encoding.UTF8.GetBytes(data)), csv.DataSha256);
    }

    [Fact]
    public void Long_lines_at_the_beginning_alone_make_no_room_for_more_of_them()
    {
        ImmutableArray<ResultRow> rows =
        [
            .. s_rows.Select(
                (row, i) => row with { Remark = new string('x', i < 4000 ? 9000 : 0) }
            ),
        ];

        var csv = Write(rows);

        Assert.InRange(csv.Bytes.Length, 4000 * 9000, 5000 * 9000);
        Assert.True(
            System.Runtime.InteropServices.MemoryMarshal.TryGetArray(csv.Bytes, out var all)
        );
        Assert.InRange(all.Array!.Length, csv.Bytes.Length, 2 * csv.Bytes.Length);
    }

    [Fact]
    public void Many_rows_in_another_order_are_sorted_by_their_keys()
    {
        var random = new Random(7);
        var shuffled = s_rows.ToArray();
        random.Shuffle(shuffled);

        var sorted = CanonicalOrder.Sort([.. shuffled]);

        Assert.Equal(
            shuffled
                .OrderBy(row => row.Specimen, StringComparer.Ordinal)
                .ThenBy(row => row.Replicate)
                .Select(row => row.SourceRow),
            sorted.Select(row => row.SourceRow)
        );
    }

    [Theory]
    [InlineData(100)]
    [InlineData(Rows)]
    public void Queries_taken_apart_are_those_of_one_check_after_another(int rows)
    {
        ImmutableArray<Action<QueryList>> checks =
        [
            Times(RowQueries.MoreDecimals, "results.csv", QueryList.MostListed - 50),
            Times(RowQueries.UnknownTube, "results.csv", QueryList.MostListed + 5),
            Times(RowQueries.TubeWithoutResults, "specimens.csv", 1),
            Times(RowQueries.MoreDecimals, "results.csv", QueryList.MostListed + 9),
            Times(RowQueries.UnknownTube, "specimens.csv", 2),
        ];
        var one = new QueryList();
        foreach (var check in checks)
        {
            check(one);
        }

        var joined = new QueryList();
        joined.AddAll(ApartChecks.Do(rows, joined, checks));

        Assert.Equal(one.ToImmutable(), joined.ToImmutable());
        Assert.Equal(one.StopCount, joined.StopCount);
        Assert.Equal(QueryList.MostListed + 7, joined.StopCount);
        Assert.True(joined.IsFull("results.csv", RowQueries.MoreDecimals));
    }

    private static CanonicalCsv Write(ImmutableArray<ResultRow> rows) =>
        CanonicalCsv.Write(ResultColumns.Table, rows, row => row.SourceRow);

    private static Action<QueryList> Times(QueryKind kind, string file, int count) =>
        queries =>
        {
            for (var line = 1; line <= count; line++)
            {
                queries.Add(kind, new QuerySource(file, line, "result"), $"{line}", "m", "a");
            }
        };

    // Lines become longer towards the end, and one has a comma and a letter of two bytes.
    private static ImmutableArray<ResultRow> Results()
    {
        Assert.True(StudyIntake.Read(GoodStudy.Bytes).TryGet(out var study));
        var row = study.Inputs.Results[0];
        return
        [
            .. Enumerable
                .Range(0, Rows)
                .Select(i =>
                    row with
                    {
                        SourceRow = Rows + 1 - i,
                        Specimen = $"N-{i / 3:00000}",
                        Replicate = i % 3 + 1,
                        Remark = i < 20_000 ? "" : $"long, µ {new string('x', i % 90)}",
                    }
                ),
        ];
    }
}
