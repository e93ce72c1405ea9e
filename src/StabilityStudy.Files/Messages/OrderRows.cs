using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>A request with its observations and specimens. A specimen (SPM) stands behind the observations, so that rows are made at the end.</summary>
internal sealed class OrderRows(
    MessageHead message,
    Segment? order,
    Segment request,
    MessageSettings settings
)
{
    private readonly List<(Segment Result, Segment? Specimen)> _results = [];
    private readonly List<Segment> _specimens = [];

    /// <summary>Adds an observation; one behind a specimen belongs to that specimen.</summary>
    public void AddResult(Segment result) =>
        _results.Add((result, _specimens.Count > 0 ? _specimens[^1] : null));

    /// <summary>Adds a specimen.</summary>
    public void AddSpecimen(Segment specimen) => _specimens.Add(specimen);

    /// <summary>A line for each observation.</summary>
    /// <param name="leaveAside">Told the status of each observation that study.toml leaves aside.</param>
    public IEnumerable<TableLine> Rows(Action<string> leaveAside)
    {
        foreach (var (result, specimen) in _results)
        {
            var status = message.Text.Component(result.Field(11), 1, "OBX-11");
            var row = new Observation(
                message.Text,
                message.Times,
                order,
                request,
                result,
                specimen ?? _specimens.FirstOrDefault(),
                HasSeveralSpecimens: specimen is null && _specimens.Count > 1,
                status.Kind == CellKind.Refused
                    ? StatusMeaning.NotDeclared
                    : ResultStatus.MeaningOf(status.Text, settings.Statuses),
                settings.Wanted.Contains(MessageColumns.RejectReason),
                settings.IsKnownWord
            );
            if (row.Meaning == StatusMeaning.LeftAside)
            {
                leaveAside(status.Text);
                continue;
            }

            yield return new(
                result.Line,
                [
                    .. MessageColumns.All.Select(column =>
                        settings.Wanted.Contains(column.Name) ? column.Read(row) : new("")
                    ),
                ]
            );
        }
    }
}
