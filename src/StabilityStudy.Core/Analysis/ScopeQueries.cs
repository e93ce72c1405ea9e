using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the instruments and sites of a study say against one conclusion for all of them.</summary>
internal static class ScopeQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SiteNotStated = Kinds.Add("site-not-stated", QueryRank.Stop, "the protocol plans specimens for each site, and an instrument has no site", "write the site of each instrument in study.toml");
    internal static readonly QueryKind SeveralInstruments = Kinds.Add("several-instruments", QueryRank.LaxConduct, "specimens were tested on several instruments, and the protocol plans a number for the group alone, so each instrument has only a part of it", "plan the number for each instrument in the next study");
    // csharpier-ignore-end

    /// <summary>Instruments without the site that the protocol asks for.</summary>
    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs.Protocol.SpecimensPer != PlannedPer.Site
            ? []
            : inputs
                .Facts.Instruments.Where(instrument => instrument.Site is null)
                .Select(instrument => new DataQuery(
                    SiteNotStated,
                    new QuerySource("study.toml", null, "instrument"),
                    instrument.Id,
                    $"Instrument {instrument.Id} has no site; the protocol plans its specimens for each site.",
                    "Write site = \"…\" beside its id."
                ));

    /// <summary>A sequence over several instruments that was planned as one.</summary>
    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        if (sequence.Parts.IsEmpty || protocol.SpecimensPer != PlannedPer.Group)
        {
            yield break;
        }

        yield return new(
            SeveralInstruments,
            new QuerySource(StudyFileNames.Usual.Results, null, "instrument"),
            "",
            $"tested on {string.Join(" and ", sequence.Parts.Select(part => part.Code.Length == 0 ? "an instrument that is not recorded" : part.Code))}, while the planned number holds for the group; a window for all is stated only where each instrument supports it on its own specimens.",
            "Write specimens_per = \"instrument\" in the protocol of the next study, and plan the number for each."
        )
        {
            Scope = new(sequence.Analyte, sequence.Group, sequence.Storage, null),
        };
    }
}
