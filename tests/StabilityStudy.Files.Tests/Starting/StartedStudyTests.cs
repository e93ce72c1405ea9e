using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Starting;

namespace StabilityStudy.Files.Tests.Starting;

public sealed class StartedStudyTests
{
    private static readonly NewStudy s_study = new(
        "good",
        "Title",
        "Invented laboratory",
        "May it wait?",
        null,
        [new Person("LS1", "Lab Scientist One", "lab scientist")],
        [],
        [],
        Invented: false
    );

    private static string Protocol => GoodStudy.Text(GoodStudy.Bytes, StudyBytes.ProtocolName);

    [Fact]
    public void It_has_the_code_asked_for_and_the_protocol_otherwise_byte_for_byte()
    {
        var started = Started(Protocol);

        Assert.Equal("OWN-1", started.Protocol.Code);
        Assert.Equal(
            Protocol.Replace("code = \"WB-RT-12\"", "code = \"OWN-1\"", StringComparison.Ordinal),
            Text(started, StudyBytes.ProtocolName)
        );
    }

    [Fact]
    public void Its_tables_have_headers_and_no_rows()
    {
        var started = Started(Protocol);

        foreach (var name in new[] { "specimens.csv", "results.csv" })
        {
            var text = Text(started, name);
            Assert.StartsWith("specimen,tube,", text, StringComparison.Ordinal);
            Assert.EndsWith("\n", text, StringComparison.Ordinal);
            Assert.Equal(1, text.Count(c => c == '\n'));
        }
    }

    [Theory]
    [InlineData("every run", true)]
    [InlineData("kept elsewhere", false)]
    public void There_is_a_file_of_controls_where_the_protocol_wants_them(string rule, bool wanted)
    {
        var lines = Protocol
            .Split('\n')
            .Where(line => !line.StartsWith("controls = ", StringComparison.Ordinal))
            .Prepend($"controls = \"{rule}\"");

        var started = Started(string.Join('\n', lines));

        Assert.Equal(wanted, started.Files.Any(file => file.Name == "controls.csv"));
    }

    [Fact]
    public void Read_while_collecting_it_has_no_stop_and_read_for_a_report_it_has()
    {
        var files = StudyBytes.Of(
            Started(Protocol).Files.Select(file => KeyValuePair.Create(file.Name, file.Bytes))
        );

        Assert.True(StudyIntake.ReadCollecting(files).TryGet(out var study));
        Assert.Empty(study.Inputs.Tubes);
        Assert.False(StudyIntake.Read(files).TryGet(out _));
        Assert.All(
            StudyIntake.Read(files).Queries.Where(query => query.Severity == Severity.Stop),
            query => Assert.Equal("no-data-yet", query.Code)
        );
    }

    [Theory]
    [InlineData("with a space")]
    [InlineData("")]
    public void An_unfit_code_is_a_query(string code)
    {
        var outcome = StartedStudy.Of(Protocol, code, s_study);

        Assert.False(outcome.TryGet(out _));
        Assert.Contains(outcome.Queries, query => query.Severity == Severity.Stop);
    }

    [Fact]
    public void A_title_that_is_too_long_is_a_query()
    {
        var outcome = StartedStudy.Of(
            Protocol,
            "OWN-1",
            s_study with
            {
                Title = new string('x', NewStudy.LongestTitle + 1),
            }
        );

        Assert.Equal(
            "text-too-long",
            Assert.Single(outcome.Queries, query => query.Severity == Severity.Stop).Code
        );
    }

    private static StartedStudy Started(string protocol)
    {
        Assert.True(StartedStudy.Of(protocol, "OWN-1", s_study).TryGet(out var started));
        return started;
    }

    private static string Text(StartedStudy started, string name) =>
        Encoding.UTF8.GetString(started.Files.Single(file => file.Name == name).Bytes.Span);
}
