using StabilityStudy.Reporting.Report.Conduct;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>When a window is supported, how specimens are handled, and what the study cannot show, a statement each.</summary>
internal static class Scope
{
    public static IEnumerable<Definition> Of(StudyProtocol protocol)
    {
        yield return new(
            "A window is supported",
            $"only when every criterion is met at that time and at every earlier one. It is never longer than the shortest delay really tested, and it holds only for the reagents, analyzers, tubes, groups and baselines of this study. {Manufacturer(protocol)} Where the anticoagulant of a specimen is unknown, the shortest window applies."
        );
        yield return new(
            "Handling",
            string.Join(" ", HandlingDefinitions.PlannedOrUsual(protocol))
        );
        yield return new("What this study cannot show", string.Join(" ", NotShown(protocol)));
    }

    private static string Manufacturer(StudyProtocol protocol)
    {
        var limits = protocol
            .Analytes.Where(analyte => analyte.ManufacturerLimit is not null)
            .GroupBy(analyte => DurationText.FormatWindow(analyte.ManufacturerLimit!.Time))
            .Select(same =>
                protocol.Analytes.Length > 1
                    ? $"{same.Key} ({string.Join(", ", same.Select(item => item.Id))})"
                    : same.Key
            )
            .ToArray();
        return limits.Length == 0
            ? "The manufacturer's limit is not stated here; a window beyond it is a modified test."
            : $"A window beyond the manufacturer's limit of {string.Join(", ", limits)} is a modified test.";
    }

    private static IEnumerable<string> NotShown(StudyProtocol protocol)
    {
        yield return "Any other group or anticoagulant, state or temperature of the tube, and any longer time.";
        var unmeasured = protocol.Storages.Where(storage => !protocol.IsSinceCollection(storage));
        if (unmeasured.FirstOrDefault() is { } first)
        {
            yield return OriginWords.Sentence(protocol, first);
        }

        var shares = protocol
            .Criteria.Select(criterion => criterion.SharePercentRequired)
            .OfType<decimal>()
            .Where(share => share < 100)
            .Distinct()
            .ToArray();
        if (shares.Length > 0)
        {
            yield return $"That nobody's result changes: {string.Join(" or ", shares.Select(NumberText.Plain))} of 100 is what must be shown.";
        }
    }
}
