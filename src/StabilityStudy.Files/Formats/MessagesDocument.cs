using System.Text;
using StabilityStudy.Files.Messages;

namespace StabilityStudy.Files.Formats;

/// <summary>The part of FORMATS.md on files of messages.</summary>
internal static class MessagesDocument
{
    /// <summary>Appends it.</summary>
    public static void Append(StringBuilder text)
    {
        text.Append("\n## A file of HL7 v2 result messages, in place of results.csv\n\n")
            .Append(
                $"A file whose name ends in {MessageFile.Extension} holds ORU^R01 messages, one or many. Their form is that of HL7 Version 2.5.1, chapter 7; in other versions 2.x these fields, where they exist, stand in the same places. "
                    + "Segments end in CR, LF or both; messages stand in framed blocks (MLLP), in batches (FHS, BHS, BTS, FTS), or one after the other. "
                    + "Each observation (OBX) is a row with the columns below, which `columns` of `[read.results]` names like the headers of a table; a column that is called as in results.csv needs no setting.\n\n"
                    + "No other fields are read, and of these only the ones that study.toml names or that need no setting. Names, numbers and addresses of persons stand in other fields, which are never made into text. "
                    + "A text in place of a result is not repeated in a query unless it is a single short word.\n\n"
                    + "The signs are those of MSH-1 and MSH-2. The characters are those of MSH-18; where it states none, they are ASCII or UTF-8, or what `encoding` says. "
                    + "A time without an offset has the offset of MSH-7 where that states one, and else the zone of the file or study. A time needs its minutes.\n\n"
                    + "A final result (OBX-11 is F) is read. One that cannot be obtained (X) is no result. Say in `result_status` what becomes of each other status. "
                    + "Where a result is missing and SPM-21 states why the specimen was rejected, it is read as CLOT (for RC), HEMOLYSIS (RH) or QNS (QS), and as NA for every other reason.\n\n"
                    + "A message that is cut off, continued elsewhere, marked for training, or of another type with results stops the study. Messages of types without results are counted.\n\n"
            )
            .Append("| column | field | meaning |\n| --- | --- | --- |\n");
        foreach (var column in MessageColumns.All)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{column.Name}` | {column.Fields} | {column.Note} |\n"
            );
        }
    }
}
