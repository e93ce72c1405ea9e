using System.Collections.Frozen;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// The status of a result, OBX-11 (HL7 Version 2.5.1, chapter 7, table 0085, from memory). Final results are read and those that cannot be
/// obtained are no results; of all others study.toml must say what becomes of them.
/// </summary>
internal static class ResultStatus
{
    /// <summary>The word in study.toml for a field without a status.</summary>
    public const string None = "none";

    /// <summary>Final.</summary>
    public const string Final = "F";

    /// <summary>Cannot be obtained.</summary>
    public const string CannotBeObtained = "X";

    private static readonly FrozenDictionary<
        string,
        (string Words, ImmutableArray<StatusMeaning> Allowed)
    > s_known = new Dictionary<string, (string, ImmutableArray<StatusMeaning>)>
    {
        ["C"] = ("a correction that replaces a final result", [StatusMeaning.Result]),
        // What was deleted or wrong must not stand as if nothing had been said of it.
        ["D"] = ("deletes a result", [StatusMeaning.NoResult]),
        [Final] = ("final", [StatusMeaning.Result]),
        ["I"] = ("the result is pending", [StatusMeaning.LeftAside]),
        ["N"] = ("not asked for", [StatusMeaning.LeftAside]),
        ["O"] = ("a description of the order, without a result", [StatusMeaning.LeftAside]),
        ["P"] = ("preliminary", [StatusMeaning.LeftAside, StatusMeaning.Result]),
        ["R"] = ("entered, not verified", [StatusMeaning.LeftAside, StatusMeaning.Result]),
        ["S"] = ("partial", [StatusMeaning.LeftAside]),
        ["U"] = (
            "an earlier result became final, which is not repeated",
            [StatusMeaning.LeftAside]
        ),
        ["W"] = ("an earlier result was wrong", [StatusMeaning.NoResult]),
        [CannotBeObtained] = ("cannot be obtained", [StatusMeaning.NoResult]),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The statuses of the standard, and the word for none.</summary>
    public static IEnumerable<string> Known => s_known.Keys.Append(None);

    /// <summary>What becomes of a result.</summary>
    /// <param name="status">OBX-11.</param>
    /// <param name="declared">What study.toml says.</param>
    public static StatusMeaning MeaningOf(
        string status,
        FrozenDictionary<string, StatusMeaning> declared
    ) =>
        declared.TryGetValue(status.Length == 0 ? None : status, out var meaning) ? meaning
        : status == Final ? StatusMeaning.Result
        : status == CannotBeObtained ? StatusMeaning.NoResult
        : StatusMeaning.NotDeclared;

    /// <summary>What the standard means by a status; empty for one of the sender's own.</summary>
    public static string WordsOf(string status) =>
        s_known.TryGetValue(status, out var known) ? known.Words : "";

    /// <summary>What study.toml may say of a status.</summary>
    public static ImmutableArray<StatusMeaning> AllowedFor(string status) =>
        s_known.TryGetValue(status, out var known)
            ? known.Allowed
            : [StatusMeaning.Result, StatusMeaning.NoResult, StatusMeaning.LeftAside];
}
