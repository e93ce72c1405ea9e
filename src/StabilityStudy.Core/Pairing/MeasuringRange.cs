namespace StabilityStudy.Core.Pairing;

/// <summary>A number outside the method's measuring interval says only on which side the value lies.</summary>
internal static class MeasuringRange
{
    /// <summary>The result as the measuring interval lets it count.</summary>
    public static ReportedResult Apply(ReportedResult result, MeasuringInterval? interval) =>
        (result, interval) switch
        {
            (MeasuredResult { Value: var value, Text: var text }, { Lowest: var lowest })
                when value < lowest => new CensoredResult(text, CensoredSide.Below, lowest),
            (MeasuredResult { Value: var value, Text: var text }, { Highest: var highest })
                when value > highest => new CensoredResult(text, CensoredSide.Above, highest),
            _ => result,
        };
}
