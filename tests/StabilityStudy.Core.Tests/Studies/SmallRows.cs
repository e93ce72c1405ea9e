using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Tests.Studies;

/// <summary>Rows in which everything is as it should be.</summary>
internal static class SmallRows
{
    public static string Code(int specimen) =>
        string.Create(CultureInfo.InvariantCulture, $"S{specimen:000}");

    public static string TubeCode(int specimen, int hour) =>
        string.Create(CultureInfo.InvariantCulture, $"{Code(specimen)}-{hour}");

    public static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    public static TubeRow Tube(int specimen, int hour, int day, int line)
    {
        var collected = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero).AddDays(day);
        var spun = collected.AddHours(hour).AddMinutes(hour == 0 ? 15 : -20);
        return new TubeRow(
            line,
            Code(specimen),
            TubeCode(specimen, hour),
            "P" + Code(specimen),
            "none",
            "wb-rt",
            null,
            collected,
            null,
            spun,
            null,
            null,
            null,
            100,
            4,
            40,
            Hemolysis.None,
            ClotCheck.No,
            "",
            Origin.Native
        );
    }

    public static ResultRow Result(TubeRow tube, int hour, string text, int line) =>
        new(
            line,
            tube.Specimen,
            tube.Tube,
            "aPTT",
            new TestOccasion(hour == 0 ? null : SmallProtocol.At(hour)),
            1,
            tube.CollectedAt.AddHours(hour).AddMinutes(hour == 0 ? 40 : 0),
            Reported(text),
            new(
                "s",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{tube.CollectedAt:yyyy-MM-dd}-{hour}"
                ),
                "AN1",
                "R1",
                "",
                "LS1",
                "",
                ""
            )
        );

    public static ReportedResult Reported(string text) =>
        text switch
        {
            "CLOT" => new MissingResult(text, MissingReason.Clot),
            "ERROR" => new MissingResult(text, MissingReason.InstrumentError),
            "QNS" => new MissingResult(text, MissingReason.QuantityNotSufficient),
            "STORAGE" => new MissingResult(text, MissingReason.StorageFailure),
            "NT" => new MissingResult(text, MissingReason.NotTested),
            "NA" => new MissingResult(text, MissingReason.NoReportableResult),
            ['>', .. var limit] => new CensoredResult(text, CensoredSide.Above, Number(limit)),
            ['<', .. var limit] => new CensoredResult(text, CensoredSide.Below, Number(limit)),
            _ => new MeasuredResult(text, Number(text)),
        };

    private static decimal Number(string text) =>
        decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
