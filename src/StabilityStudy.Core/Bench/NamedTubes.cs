using StabilityStudy.Core.Collecting;

namespace StabilityStudy.Core.Bench;

/// <summary>Which tube of a specimen is tested at a planned time: as a row of results says, else the one that the draw sheet named; what neither tells stays open.</summary>
/// <param name="inputs">The study.</param>
internal sealed class NamedTubes(StudyInputs inputs)
{
    private readonly ILookup<(string Specimen, string Storage), string> _tubes =
        inputs.Tubes.ToLookup(tube => (tube.Specimen, tube.Storage), tube => tube.Tube);

    private readonly ILookup<(string Specimen, TestOccasion Occasion), string> _tested =
        inputs.Results.ToLookup(row => (row.Specimen, row.Occasion), row => row.Tube);

    /// <summary>The tube of a planned test.</summary>
    public WaitingTube Waiting(PlannedTest test)
    {
        var protocol = inputs.Protocol;
        var storage = protocol.Storages.Single(item => item.Id == test.Storage);
        var group = protocol.Groups.Single(item => item.Id == test.Group);
        var place = DrawPlan.TestsOf(protocol, test.Group).IndexOf((storage, test.Occasion));
        var planned = place >= 0 ? Whole(test.Specimen, DrawPlan.LetterOf(protocol, place)) : null;

        // A sheet of pairs has no codes of tubes, and its times stand for them.
        var ofStorage = _tubes[(test.Specimen, test.Storage)]
            .Where(code => code != $"{test.Occasion}")
            .Select(code => Whole(test.Specimen, code))
            .ToImmutableArray();
        var tube =
            _tested[(test.Specimen, test.Occasion)]
                .Select(code => Whole(test.Specimen, code))
                .FirstOrDefault(ofStorage.Contains)
            ?? (planned is not null && ofStorage.Contains(planned) ? planned : null);
        return new WaitingTube(
            test.Specimen,
            tube,
            tube is not null
            && planned is not null
            && tube != planned
            && ofStorage.Contains(planned)
                ? planned
                : null,
            group,
            storage,
            test.Occasion.TimePoint ?? default
        );
    }

    /// <summary>The code as it stands on the label: with its specimen, also where the file has the letter alone.</summary>
    private static string Whole(string specimen, string tube) =>
        tube.StartsWith(specimen, StringComparison.Ordinal) ? tube : $"{specimen}-{tube}";
}
