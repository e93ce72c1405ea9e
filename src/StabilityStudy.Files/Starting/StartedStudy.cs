using System.Text;
using System.Text.RegularExpressions;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Starting;

/// <summary>The files of a new study, none of which holds anything of another one.</summary>
/// <param name="Protocol">Its protocol.</param>
/// <param name="Changes">How many places of the protocol are marked to be changed.</param>
/// <param name="Files">Names and contents, in the order in which they are worked on.</param>
public sealed partial record StartedStudy(
    StudyProtocol Protocol,
    int Changes,
    ImmutableArray<(string Name, ReadOnlyMemory<byte> Bytes)> Files
)
{
    /// <summary>Begins a study.</summary>
    /// <param name="protocol">Text of a ready protocol.</param>
    /// <param name="code">The study's own code.</param>
    /// <param name="study">What else is known of it.</param>
    /// <returns>The files, or the queries that the code, or a text of the study, gives.</returns>
    public static Outcome<StartedStudy> Of(string protocol, string code, NewStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var own = Bytes(CodeLine().Replace(protocol, _ => "code = " + TomlLiteral.Quoted(code), 1));
        var read = ProtocolReader.Read(own, StudyBytes.ProtocolName);
        if (!read.TryGet(out var planned))
        {
            return Outcome.Stopped<StartedStudy>(read.Queries);
        }

        var facts = Bytes(FactsTemplate.Write(study));
        var queries = new QueryList();
        _ = Facts.StudyFactsReader.Read(facts, StudyBytes.FactsName, queries);
        if (queries.StopCount > 0)
        {
            return Outcome.Stopped<StartedStudy>(queries.ToImmutable());
        }

        return Outcome.Of(
            new StartedStudy(
                planned,
                MarkedPlaces.Lines(own.Span).Length,
                [
                    (StudyBytes.ProtocolName, own),
                    (StudyBytes.FactsName, facts),
                    (StudyFileNames.Usual.Specimens, Header(TubeColumns.Table.Columns)),
                    (StudyFileNames.Usual.Results, Header(ResultColumns.Table.Columns)),
                    .. planned.Controls == ControlRule.EveryRun
                        ? [(StudyFileNames.Usual.Controls, Header(ControlColumns.Table.Columns))]
                        : ImmutableArray<(string, ReadOnlyMemory<byte>)>.Empty,
                ]
            ),
            read.Queries
        );
    }

    private static ReadOnlyMemory<byte> Header(CsvColumns columns) =>
        Bytes(string.Join(',', columns.Names) + "\n");

    private static ReadOnlyMemory<byte> Bytes(string text) => Encoding.UTF8.GetBytes(text);

    [GeneratedRegex("^code = \"[^\"\n]*\"", RegexOptions.Multiline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CodeLine();
}
