using System.Collections.Immutable;
using static StabilityStudy.Files.Formats.KeyNeed;

namespace StabilityStudy.Files.Formats;

/// <summary>What each key of study.toml is for.</summary>
internal static class FactsNotes
{
    public static readonly ImmutableArray<KeyNote> All =
    [
        new("format", Required, "layout of the file", "1"),
        new("title", Required, "title of the study", "\"aPTT in whole blood\""),
        new("facility", Required, "the laboratory", "\"Invented laboratory\""),
        new(
            "question",
            Required,
            "what was asked, in one sentence",
            "\"May whole blood wait eight hours?\""
        ),
        new("invented", Optional, "whether this is an invented example", "true"),
        new(
            "time_zone",
            Depends,
            "IANA zone; required for times without an offset",
            "\"America/Chicago\""
        ),
        new("person", Required, "persons, a [[person]] each", "[[person]]"),
        new("person.code", Required, "code used in the files", "\"LS1\""),
        new("person.name", Required, "name in the report", "\"Lab Scientist One\""),
        new("person.role", Required, "role", "\"lab scientist\""),
        new("instrument", Optional, "instruments, an [[instrument]] each", "[[instrument]]"),
        new("instrument.id", Required, "code used in results.csv", "\"AN1\""),
        new("instrument.name", Required, "name in the report", "\"Analyzer one\""),
        new("lot", Optional, "reagent lots, a [[lot]] each", "[[lot]]"),
        new("lot.id", Required, "code used in results.csv", "\"R-1\""),
        new("lot.kind", Required, "reagent, calibrator …", "\"reagent\""),
        new("lot.analyte", Required, "analyte it serves", "\"aPTT\""),
        new("lot.expires", Optional, "last day of use", "\"2027-01-31\""),
        new("lot.isi", Optional, "international sensitivity index of a thromboplastin", "1.05"),
        new("lot.mean_normal_time", Optional, "mean normal prothrombin time, s", "11.8"),
        new("clock", Optional, "whose clock each time column is", "{ tested_at = \"analyzer\" }"),
        new("clock.collected_at", Optional, "of that column", "\"label printer\""),
        new("clock.received_at", Optional, "of that column", "\"laboratory system\""),
        new("clock.spun_at", Optional, "of that column", "\"wall clock\""),
        new("clock.separated_at", Optional, "of that column", "\"wall clock\""),
        new("clock.frozen_at", Optional, "of that column", "\"wall clock\""),
        new("clock.thawed_at", Optional, "of that column", "\"wall clock\""),
        new("clock.tested_at", Optional, "of that column", "\"analyzer\""),
        new("files", Optional, "names of the data files", "{ results = \"results.csv\" }"),
        new("files.specimens", Optional, "a row a tube", "\"specimens.csv\""),
        new("files.results", Optional, "a row a result", "\"results.csv\""),
        new("files.controls", Optional, "a row a control result", "\"controls.csv\""),
        new(
            "exclusion",
            Optional,
            "pairs left out by a decision, an [[exclusion]] each",
            "[[exclusion]]"
        ),
        new("exclusion.specimen", Required, "specimen code", "\"N-017\""),
        new("exclusion.analyte", Optional, "analyte; all when not given", "\"aPTT\""),
        new("exclusion.time_point", Optional, "time point; all when not given", "\"6 h\""),
        new("exclusion.reason", Required, "why", "\"stored in the refrigerator\""),
        new("exclusion.by", Required, "code of the person", "\"LS1\""),
        new("exclusion.on", Required, "day of the decision", "\"2026-03-06\""),
        new(
            "exclusion.time",
            Optional,
            "time of the decision on that day: shows that it came before the result",
            "\"11:20\""
        ),
        new(
            "deviation",
            Optional,
            "departures from the protocol, a [[deviation]] each",
            "[[deviation]]"
        ),
        new("deviation.text", Required, "what happened", "\"One tube was filled short.\""),
        new("deviation.by", Required, "code of the person", "\"LS1\""),
        new("deviation.on", Required, "day", "\"2026-03-06\""),
        new(
            "rerun",
            Optional,
            "tests repeated for a reason of the protocol, a [[rerun]] each",
            "[[rerun]]"
        ),
        new("rerun.specimen", Required, "specimen code", "\"N-017\""),
        new("rerun.analyte", Required, "analyte", "\"aPTT\""),
        new("rerun.time_point", Optional, "time point; the baseline when not given", "\"6 h\""),
        new(
            "rerun.reason",
            Required,
            "one of the protocol's rerun_reasons",
            "\"instrument error\""
        ),
        new("rerun.by", Required, "code of the person", "\"LS1\""),
        new("rerun.on", Required, "day of the decision", "\"2026-03-06\""),
        new(
            "read",
            Optional,
            "how the facility's own files are written, where they are not the usual ones",
            "[read.results]"
        ),
        new(
            "read.specimens",
            Optional,
            "of the file of tubes; the keys are those of read.results",
            "{ delimiter = \";\" }"
        ),
        new("read.results", Optional, "of the file of results", "{ delimiter = \";\" }"),
        new(
            "read.controls",
            Optional,
            "of the file of control results; the keys are those of read.results",
            "{ delimiter = \";\" }"
        ),
        new(
            "read.pairs",
            Optional,
            "one file with a row a pair in place of tubes and results",
            "{ file = \"pairs.csv\" }"
        ),
        new("read.results.delimiter", Optional, "sign between fields: , ; | or tab", "\";\""),
        new("read.results.decimal", Optional, "decimal sign: . or ,", "\",\""),
        new(
            "read.results.encoding",
            Optional,
            "utf-8, utf-16, windows-1252 or latin-1",
            "\"latin-1\""
        ),
        new(
            "read.results.date_format",
            Optional,
            "how times are written: d day, M month, yyyy year, H hour (h with tt for AM and PM), m minute, s second",
            "\"dd.MM.yyyy HH:mm\""
        ),
        new(
            "read.results.columns",
            Optional,
            "our column = the facility's header; other columns are then left aside",
            "{ result = \"Value\" }"
        ),
        new(
            "read.results.values",
            Optional,
            "for a column: the facility's word = ours",
            "{ time_point = { T0 = \"baseline\" } }"
        ),
        new(
            "read.results.constants",
            Optional,
            "what holds for every row and is not in the file",
            "{ analyte = \"aPTT\" }"
        ),
        new("read.pairs.delimiter", Optional, "sign between fields: , ; | or tab", "\";\""),
        new("read.pairs.decimal", Optional, "decimal sign: . or ,", "\",\""),
        new(
            "read.pairs.encoding",
            Optional,
            "utf-8, utf-16, windows-1252 or latin-1",
            "\"latin-1\""
        ),
        new(
            "read.pairs.date_format",
            Optional,
            "how times are written: d day, M month, yyyy year, H hour (h with tt for AM and PM), m minute, s second",
            "\"dd.MM.yyyy HH:mm\""
        ),
        new(
            "read.pairs.columns",
            Optional,
            "our column = the facility's header; other columns are then left aside",
            "{ result = \"Value\" }"
        ),
        new(
            "read.pairs.values",
            Optional,
            "for a column: the facility's word = ours",
            "{ time_point = { T0 = \"baseline\" } }"
        ),
        new(
            "read.pairs.constants",
            Optional,
            "what holds for every row and is not in the file",
            "{ analyte = \"aPTT\" }"
        ),
        new("read.pairs.file", Required, "name of the file", "\"pairs.csv\""),
    ];
}
