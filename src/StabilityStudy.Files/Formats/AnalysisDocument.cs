using System.Text;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Formats;

/// <summary>The part of FORMATS.md on analysis.json; its tables are written from the forms.</summary>
internal static class AnalysisDocument
{
    public static void Append(StringBuilder text)
    {
        text.Append(
            CultureInfo.InvariantCulture,
            $"""

            # {AnalysisJson.FileName}

            All that was computed, attached to each report: JSON of the schema [analysis.schema.json](Json/analysis.schema.json), form {AnalysisJson.Format} (`format`). Reports of versions 0.2.0 to 0.5.0 have form
            {AnalysisJson.EarlierFormat}, in which each pair states all of its specimen, tubes and runs; they are verified as ever.

            - Results, and what the protocol sets, are texts with the digits that were read; where a limit or level goes into a computation, it stands beside the figures as a number. Counts are whole numbers. Times, days and
              durations are those of ISO 8601 (`PT6H5M` is 6 hours and 5 minutes), but for the curves of drift, which have hours. Other words are codes of this program.
            - A computed figure is a number of at most {AnalysisJson.Digits} significant digits. Computers calculate with about 16 digits, and the last of them can differ between processors, because exponential functions and logarithms
              are those of the system. After rounding to {AnalysisJson.Digits}, about one in 4,000 of the affected figures still differs. `verify` accepts a relative difference of up to 1e-9, in every form.
            - Messages of `verify` count the entries of a list from 1: `specimens[1]` is the first.
            - What belongs to a specimen, to one of its tubes, or to a run of an analyte stands once and is named by its code. To put a pair together: its `specimen` is an entry of `specimens`, with the person and the time of
              collection; the `tube` of a result is one of that entry's tubes, with the times of its handling; `run` is an entry of `runs` with the analyte of the sequence, with the instrument, lot, calibration and operator that all its results share;
              the baseline is the entry of the same `specimen` in `baselines` of the sequence.
            - A property that may be left out is left out where the value is not known, was not recorded, or is false. `countsForAgreement` alone is left out where it is true: only `false` is written. Entries of these lists
              stand on a line each.

            """
        );
        AppendTable(text, "`specimens`", PairForms.SpecimenForm);
        AppendTable(text, "`tubes` of a specimen", PairForms.TubeForm);
        AppendTable(text, "`runs`", PairForms.RunForm);
        AppendTable(
            text,
            "`baselines` of a sequence; `delayed` of a pair has the same properties but for `specimen`",
            PairForms.BaselineForm
        );
        AppendTable(text, "`pairs` of a time point", PairForms.PairForm);
    }

    private static void AppendTable<T>(StringBuilder text, string title, ObjectForm<T> form)
    {
        text.Append(
            CultureInfo.InvariantCulture,
            $"\n## {title}\n\n| property | may be left out | meaning |\n| --- | --- | --- |\n"
        );
        foreach (var property in form.Properties)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{property.Name}` | {(property.MayBeLeftOut ? "yes" : "no")} | {property.Note} |\n"
            );
        }
    }
}
