using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Tells of corrected times: they decide which delay a result counts for.</summary>
internal static class ClockCorrectionQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ClockCorrected = Kinds.Add("clock-corrected", QueryRank.Time, "times of results were corrected because the clock of an analyzer was wrong, as study.toml states", "check that the clock was compared, and that the correction was decided before the results were looked at");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs.Facts.ClockCorrections.Select(correction => new DataQuery(
            ClockCorrected,
            new("study.toml", correction.Line, "clock_correction"),
            correction.Minutes.ToString(CultureInfo.InvariantCulture),
            $"The times of {Count(inputs, correction)} in {correction.Where} were recorded by a wrong clock; {Shift(correction)} ({correction.Reason.TrimEnd('.')}; {correction.By}, {correction.On:yyyy-MM-dd})."
        ));

    private static string Count(StudyInputs inputs, ClockCorrection correction)
    {
        var count = inputs.Results.Count(correction.Concerns);
        return count == 1 ? "one result" : $"{count} results";
    }

    private static string Shift(ClockCorrection correction) =>
        correction.Minutes > 0
            ? $"{correction.Minutes} min are added to each"
            : $"{-correction.Minutes} min are taken off each";
}
