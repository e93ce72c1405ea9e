using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>Tells whose clock a time from a message was (HL7 Version 2.5.1, chapter 7, OBX-14 and OBX-19).</summary>
internal static class SentTimeWords
{
    public static string Of(SentTime time) =>
        $"{time.Column} from {time.Field}"
        + (
            time.Field switch
            {
                "OBX-19" => time.WithoutInstrument == 0
                    ? ", the time of analysis by the clock of the instrument that the results name"
                    : FormattableString.Invariant(
                        $", the time of analysis; {time.WithoutInstrument} of the results name no instrument, so that it is not known whose clock it was"
                    ),
                "OBX-14" =>
                    ", the time of observation as the sender means it; not the instrument's own time of analysis",
                _ => "",
            }
        );
}
