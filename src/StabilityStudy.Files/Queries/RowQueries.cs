using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about what the rows of the data files say. A list, hence long.</summary>
public static class RowQueries
{
    /// <summary>A value is missing.</summary>
    public static readonly QueryKind MissingValue = new(
        "missing-value",
        Stop,
        "a value that every row needs is empty",
        "fill in the value"
    );

    /// <summary>Spaces around a value.</summary>
    public static readonly QueryKind SurroundingSpace = new(
        "surrounding-space",
        Stop,
        "a value begins or ends with a space",
        "remove the space"
    );

    /// <summary>An identity.</summary>
    public static readonly QueryKind LooksLikeIdentity = new(
        "looks-like-identity",
        Stop,
        "a code looks like a name, a birth date or a record number",
        "replace it by a study code that says nothing about the person"
    );

    /// <summary>Not a time.</summary>
    public static readonly QueryKind NotATime = new(
        "not-a-time",
        Stop,
        "a text is not a date and time",
        "write 2026-02-28T14:05 with an offset (+01:00 or Z), or without when study.toml gives time_zone"
    );

    /// <summary>No offset.</summary>
    public static readonly QueryKind TimeWithoutOffset = new(
        "time-without-offset",
        Stop,
        "a time has no offset and study.toml gives no time_zone",
        "add the offset to the time, or time_zone to study.toml"
    );

    /// <summary>Skipped hour.</summary>
    public static readonly QueryKind TimeDoesNotExist = new(
        "time-does-not-exist",
        Stop,
        "a local time was skipped when the clocks went forward",
        "find out the true time and write it with its offset"
    );

    /// <summary>Repeated hour.</summary>
    public static readonly QueryKind TimeExistsTwice = new(
        "time-exists-twice",
        Stop,
        "a local time existed twice when the clocks went back",
        "write the time with its offset"
    );

    /// <summary>Before 2000.</summary>
    public static readonly QueryKind TimeTooEarly = new(
        "time-too-early",
        Stop,
        "a time lies before the year 2000",
        "correct the date"
    );

    /// <summary>Order.</summary>
    public static readonly QueryKind TimesOutOfOrder = new(
        "times-out-of-order",
        Stop,
        "a time lies before the time of the step before it",
        "correct the time that is wrong"
    );

    /// <summary>Too far apart.</summary>
    public static readonly QueryKind TimesTooFarApart = new(
        "times-too-far-apart",
        Stop,
        "two times of one tube lie further apart than any planned delay",
        "correct the date that is wrong"
    );

    /// <summary>Result text.</summary>
    public static readonly QueryKind UnknownResult = new(
        "unknown-result",
        Stop,
        "a result is neither a number, nor beyond a limit, nor a known word for \"no result\"",
        "write a number, <n, >n, or NA, CLOT, FIBRIN, HEMOLYSIS, ERROR, QNS or NT"
    );

    /// <summary>Unit.</summary>
    public static readonly QueryKind OtherUnit = new(
        "other-unit",
        Stop,
        "a result has another unit than the protocol; results are not converted",
        "convert the results in the file, or correct the unit"
    );

    /// <summary>Time point.</summary>
    public static readonly QueryKind UnknownTimePoint = new(
        "unknown-time-point",
        Stop,
        "a time point is neither \"baseline\" nor planned in the protocol",
        "use a time point of the protocol, written as there"
    );

    /// <summary>No tube row.</summary>
    public static readonly QueryKind UnknownTube = new(
        "unknown-tube",
        Stop,
        "a result belongs to a tube that is not in the specimens file",
        "add the tube to the specimens file, or correct the codes"
    );

    /// <summary>Disagreement between tubes.</summary>
    public static readonly QueryKind TubesDisagree = SharedKinds.TubesDisagree;

    /// <summary>Same tube twice.</summary>
    public static readonly QueryKind DuplicateTube = new(
        "duplicate-tube",
        Stop,
        "a tube of a specimen has two rows",
        "remove one of them, or correct the tube code"
    );

    /// <summary>Same row twice.</summary>
    public static readonly QueryKind DuplicateRow = new(
        "duplicate-row",
        WithoutEffect,
        "a row stands twice with the same content; the second is not used",
        "remove one of them"
    );

    /// <summary>Same key, other content.</summary>
    public static readonly QueryKind ConflictingRows = new(
        "conflicting-rows",
        Stop,
        "two rows have the same key and different content",
        "keep the row that is true, or correct the key of one"
    );

    /// <summary>Not canonical.</summary>
    public static readonly QueryKind NotCanonical = new(
        "not-canonical",
        Stop,
        "a file that should be in canonical form has other bytes than its rows give",
        "do not trust the file; take it from the report again"
    );

    /// <summary>Expired lot.</summary>
    public static readonly QueryKind LotExpired = new(
        "lot-expired",
        NotAsPlanned,
        "a lot was used after its last day",
        "check the dates; if they are right, record a deviation in study.toml"
    );

    /// <summary>More decimals.</summary>
    public static readonly QueryKind MoreDecimals = new(
        "more-decimals",
        Note,
        "a result has more decimals than the protocol says are reported",
        "nothing, if the instrument gives them; otherwise correct decimals in the protocol"
    );

    /// <summary>No results.</summary>
    public static readonly QueryKind TubeWithoutResults = new(
        "tube-without-results",
        Note,
        "a tube has no results",
        "add its results, with NT where it was not tested"
    );

    /// <summary>No controls file.</summary>
    public static readonly QueryKind ControlsFileMissing = new(
        "controls-file-missing",
        Stop,
        "the protocol wants controls in every run, and there is no file of control results",
        "add controls.csv, or set controls = \"kept elsewhere\" in the protocol before it is locked"
    );

    /// <summary>No range.</summary>
    public static readonly QueryKind ControlWithoutRange = new(
        "control-without-range",
        Stop,
        "a control result has no allowed range",
        "fill in allowed_low and allowed_high"
    );

    /// <summary>Reversed range.</summary>
    public static readonly QueryKind ControlRangeReversed = new(
        "control-range-reversed",
        Stop,
        "the lowest allowed result of a control is above the highest",
        "correct allowed_low and allowed_high"
    );

    /// <summary>Unused run.</summary>
    public static readonly QueryKind ControlRunUnknown = new(
        "control-run-unknown",
        WithoutEffect,
        "a control was tested in a run that no result names",
        "correct the run code of the control or of the results"
    );

    /// <summary>Pairs of one specimen.</summary>
    public static readonly QueryKind PairsDisagree = new(
        "pairs-disagree",
        Stop,
        "two rows of pairs say different things of the same baseline or tube",
        "correct the row that is wrong; rows of one specimen share its baseline"
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        MissingValue,
        SurroundingSpace,
        LooksLikeIdentity,
        NotATime,
        TimeWithoutOffset,
        TimeDoesNotExist,
        TimeExistsTwice,
        TimeTooEarly,
        TimesOutOfOrder,
        TimesTooFarApart,
        UnknownResult,
        OtherUnit,
        UnknownTimePoint,
        UnknownTube,
        TubesDisagree,
        DuplicateTube,
        DuplicateRow,
        ConflictingRows,
        NotCanonical,
        LotExpired,
        MoreDecimals,
        TubeWithoutResults,
        ControlsFileMissing,
        ControlWithoutRange,
        ControlRangeReversed,
        ControlRunUnknown,
        PairsDisagree,
    ];
}
