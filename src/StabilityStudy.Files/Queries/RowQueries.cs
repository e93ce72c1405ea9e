using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about what the rows of the data files say. A list, hence long.</summary>
public static class RowQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind MissingValue = Kinds.Add("missing-value", Stop, "a value that every row needs is empty", "fill in the value");
    internal static readonly QueryKind SurroundingSpace = Kinds.Add("surrounding-space", Stop, "a value begins or ends with a space", "remove the space");
    internal static readonly QueryKind LooksLikeIdentity = Kinds.Add("looks-like-identity", Stop, "a code looks like a name, a birth date, a telephone or record number or an e-mail address, or a text holds one of the last", "replace it by a study code that says nothing about the person");
    internal static readonly QueryKind NotATime = Kinds.Add("not-a-time", Stop, "a text is not a date and time", "write 2026-02-28T14:05 with an offset (+01:00 or Z), or without when study.toml gives time_zone");
    internal static readonly QueryKind TimeWithoutOffset = Kinds.Add("time-without-offset", Stop, "a time has no offset and study.toml gives no time_zone", "add the offset to the time, or time_zone to study.toml");
    internal static readonly QueryKind TimeDoesNotExist = Kinds.Add("time-does-not-exist", Stop, "a local time was skipped when the clocks went forward", "find out the true time and write it with its offset");
    internal static readonly QueryKind TimeExistsTwice = Kinds.Add("time-exists-twice", Stop, "a local time existed twice when the clocks went back", "write the time with its offset");
    internal static readonly QueryKind TimeTooEarly = Kinds.Add("time-too-early", Stop, "a time lies before the year 2000", "correct the date");
    internal static readonly QueryKind TimesOutOfOrder = Kinds.Add("times-out-of-order", Stop, "a time lies before the time of the step before it", "correct the time that is wrong");
    internal static readonly QueryKind TimesTooFarApart = Kinds.Add("times-too-far-apart", Stop, "two times of one tube lie further apart than any planned delay", "correct the date that is wrong");
    internal static readonly QueryKind UnknownResult = Kinds.Add("unknown-result", Stop, "a result is neither a number, nor beyond a limit, nor a known word for \"no result\"", "write a number, <n, >n, or NA, CLOT, FIBRIN, HEMOLYSIS, ERROR, QNS or NT");
    internal static readonly QueryKind OtherUnit = Kinds.Add("other-unit", Stop, "a result has another unit than the protocol", "name the unit as the protocol does under [read.results.values], or have the results converted under [read.results.convert]");
    internal static readonly QueryKind UnknownTimePoint = Kinds.Add("unknown-time-point", Stop, "a time point is neither \"baseline\" nor planned in the protocol", "use a time point of the protocol, written as there");
    internal static readonly QueryKind UnknownTube = Kinds.Add("unknown-tube", Stop, "a result belongs to a tube that is not in the specimens file", "add the tube to the specimens file, or correct the codes");
    internal static readonly QueryKind DuplicateTube = Kinds.Add("duplicate-tube", Stop, "a tube of a specimen has two rows", "remove one of them, or correct the tube code");
    internal static readonly QueryKind DuplicateRow = Kinds.Add(
        "duplicate-row",
        WithoutEffect,
        "a row stands twice with the same content; the second is not used",
        "remove one of them",
        query =>
            query.Values.Items is [var row, var line]
                ? query with
                {
                    Text =
                        $"{row} is already on line {line}, with the same content; this row is not used.",
                }
                : null
    );
    internal static readonly QueryKind ConflictingRows = Kinds.Add("conflicting-rows", Stop, "two rows give the same result and have different content", "number a repeated test in replicate and give its reason in [[rerun]]; correct the codes where it is another tube");
    internal static readonly QueryKind NotCanonical = Kinds.Add("not-canonical", Stop, "a file that should be in canonical form has other bytes than its rows give", "do not trust the file; take it from the report again");
    internal static readonly QueryKind LotExpired = Kinds.Add("lot-expired", NotAsPlanned, "a lot was used after its last day", "check the dates; if they are right, record a deviation in study.toml");
    internal static readonly QueryKind MoreDecimals = Kinds.Add("more-decimals", Note, "a result has more decimals than the protocol says are reported", "nothing, if the instrument gives them; otherwise correct decimals in the protocol");
    /// <summary>A tube has no results.</summary>
    public static readonly QueryKind TubeWithoutResults = Kinds.Add("tube-without-results", Note, "a tube has no results", "add its results, with NT where it was not tested");
    internal static readonly QueryKind ControlsFileMissing = Kinds.Add("controls-file-missing", Stop, "the protocol wants controls in every run, and there is no file of control results", "add controls.csv, or set controls = \"kept elsewhere\" in the protocol before it is locked");
    internal static readonly QueryKind ControlWithoutRange = Kinds.Add("control-without-range", Stop, "a control result has no allowed range", "fill in allowed_low and allowed_high");
    internal static readonly QueryKind ControlRangeReversed = Kinds.Add("control-range-reversed", Stop, "the lowest allowed result of a control is above the highest", "correct allowed_low and allowed_high");
    /// <summary>A control was tested in a run that no result names.</summary>
    public static readonly QueryKind ControlRunUnknown = Kinds.Add("control-run-unknown", WithoutEffect, "a control was tested in a run that no result names", "correct the run code of the control or of the results");
    internal static readonly QueryKind PairsDisagree = Kinds.Add("pairs-disagree", Stop, "two rows of pairs say different things of the same baseline or tube", "correct the row that is wrong; rows of one specimen share its baseline");
    internal static readonly QueryKind FlagNotDeclared = Kinds.Add("flag-not-declared", Stop, "a flag of the instrument has no declared meaning", "declare it as harmless, failed or reportable with note under [read.results.values] in study.toml");
    internal static readonly QueryKind FlagWithNote = Kinds.Add("flag-with-note", Note, "results have a flag that is declared as reportable with note; they count", "check the results beside it");
    internal static readonly QueryKind BecameDate = Kinds.Add("became-a-date", Stop, "a spreadsheet has turned a number or code into a date or time", "look the value up in the instrument's record and write it again in a column formatted as text");
    internal static readonly QueryKind CodeInExponent = Kinds.Add("code-in-exponent", Stop, "a spreadsheet has turned a code into a number with an exponent, which loses digits", "look the code up and write it again in a column formatted as text");
    internal static readonly QueryKind ShownOtherwise = Kinds.Add("shown-otherwise", Stop, "a cell of a workbook shows fewer decimals than it stores", "say in numbers under [read] whether the shown or the stored number was reported");
    internal static readonly QueryKind CellFormat = Kinds.Add("cell-format", Stop, "the format of a cell shows something else than the digits of its number", "format the cell as a plain number or as text");
    internal static readonly QueryKind CellError = Kinds.Add("cell-error", Stop, "the formula of a cell gives an error", "correct the formula, or write the value");
    internal static readonly QueryKind MergedCell = Kinds.Add("merged-cell", Stop, "a row has a cell that is merged with another", "take the merging back and fill in each row");
    internal static readonly QueryKind EmptyCellUnclear = Kinds.Add("empty-cell-unclear", Stop, "a row with several results has an empty cell, which can mean several things", "say in empty_cell under [read] what it means");
    internal static readonly QueryKind DatesOfTwoKinds = Kinds.Add("dates-of-two-kinds", Stop, "some times of a column are dates of the spreadsheet and others are texts: a spreadsheet with another order of day and month turns those that it can read, wrongly, and leaves the rest", "export the file again, and do not open it in a spreadsheet before");
    internal static readonly QueryKind TubePatternFailed = Kinds.Add("tube-pattern-failed", Stop, "a code does not have the form of tube_pattern", "correct the code, or tube_pattern in study.toml");
    internal static readonly QueryKind HeaderUnitDiffers = Kinds.Add("header-unit-differs", Stop, "the header of results states another unit than study.toml", "correct the one that is wrong");
    internal static readonly QueryKind RunAnHourEarly = Kinds.Add("run-an-hour-early", Stop, "tests of a run lie before collection or spinning, and with an hour added all of them fit their plan: the clock of the analyzer may not have been set when the clocks changed", "compare the clock of the analyzer with that of the laboratory; where it was wrong, state it under [[clock_correction]] in study.toml");
    internal static readonly QueryKind RunOffByAnHour = Kinds.Add("run-off-by-an-hour", Time, "all tests of a run lie an hour beside what was planned: the clock of the analyzer may not have been set when the clocks changed", "compare the clock of the analyzer with that of the laboratory; where it was wrong, state it under [[clock_correction]] in study.toml");
    // csharpier-ignore-end
}
