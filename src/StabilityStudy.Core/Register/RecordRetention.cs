namespace StabilityStudy.Core.Register;

/// <summary>Until when the records of a report are kept.</summary>
/// <param name="Report">The report.</param>
/// <param name="LastUse">Last day on which anything of it was in use; null while it is.</param>
/// <param name="NotBefore">The day before which nothing is thrown away.</param>
public sealed record KeptRecords(RegisteredReport Report, DateOnly? LastUse, DateOnly NotBefore);

/// <summary>
/// Until when records are kept: as long as something of the report is in use, and a number of years afterwards. A report that nobody can verify, or on which
/// nobody decided, is kept like one in use, because nobody knows yet what follows from it.
/// </summary>
public static class RecordRetention
{
    /// <summary>The reports with their days.</summary>
    /// <param name="register">The register.</param>
    /// <param name="day">The day as of which it is asked.</param>
    /// <param name="years">Years after the last use.</param>
    public static ImmutableArray<KeptRecords> Of(WindowRegister register, DateOnly day, int years)
    {
        ArgumentNullException.ThrowIfNull(register);
        var windows = register.On(day).ToLookup(item => item.Report);
        return
        [
            .. register.Reports.Select(report =>
            {
                var ends = windows[report].Select(item => EndOf(item, register, day)).ToArray();
                var last = ends.Length == 0 || ends.Any(end => end is null) ? null : ends.Max();
                return new KeptRecords(report, last, (last ?? day).AddYears(years));
            }),
        ];
    }

    /// <summary>Last day of use of a row; null while it is in use, may come into use, or nobody knows.</summary>
    private static DateOnly? EndOf(StandingWindow item, WindowRegister register, DateOnly day) =>
        item.Standing switch
        {
            WindowStanding.Superseded => register.SuccessorOf(item.Report, day)?.From.AddDays(-1),
            WindowStanding.Withdrawn or WindowStanding.EndedByNewDirector =>
                item.TakenAwayBy?.From.AddDays(-1),
            WindowStanding.Declined or WindowStanding.NotSupported => item.Report.From,
            WindowStanding.NotTrusted
            or WindowStanding.NotDecided
            or WindowStanding.InDoubt
            or WindowStanding.NotYet
            or WindowStanding.PastReview
            or WindowStanding.InForce => null,
        };
}
