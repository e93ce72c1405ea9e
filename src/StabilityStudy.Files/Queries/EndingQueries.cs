using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about the notice that ends a study without a conclusion.</summary>
public static class EndingQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    /// <summary>The study was ended.</summary>
    public static readonly QueryKind StudyEnded = Kinds.Add("study-ended", Stop, "a signed notice ended the study without a conclusion", "make no report; a new study of the same question has a protocol of its own, and states this one");
    /// <summary>The notice is not signed.</summary>
    public static readonly QueryKind NoticeNotSigned = Kinds.Add("ended-notice-not-signed", Stop, "the notice that ends the study is not signed", "sign it, or take it out of the folder where the study goes on");
    /// <summary>The notice is not right, or of something else.</summary>
    public static readonly QueryKind NoticeNotRight = Kinds.Add("ended-notice-not-right", Stop, "ended.pdf is not the notice that ends this study, or was changed", "find out where it comes from; put the signed notice back, or take what is of another study out of the folder");
    /// <summary>The notice is gone.</summary>
    public static readonly QueryKind NoticeMissing = Kinds.Add("ended-notice-missing", Stop, "the record names a signed notice that ended the study, and ended.pdf is missing", "put ended.pdf back");
    // csharpier-ignore-end
}
