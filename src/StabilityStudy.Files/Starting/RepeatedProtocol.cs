using System.Text;
using System.Text.RegularExpressions;
using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Starting;

/// <summary>An approved window that a reduced study repeats.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="Approved">The longest approved time.</param>
public sealed record RepeatedWindow(
    string Analyte,
    string Group,
    string Storage,
    TimeSpan Approved
);

/// <summary>The protocol of a study that repeats a signed one.</summary>
/// <param name="Text">Text of protocol.toml.</param>
/// <param name="Numbers">How many specimens of each group, and why; empty for a full repeat.</param>
/// <param name="Left">What of the original is not repeated, in words.</param>
public sealed partial record RepeatedProtocol(
    string Text,
    ImmutableArray<ReducedNumber> Numbers,
    ImmutableArray<string> Left
)
{
    /// <summary>The original's protocol again, with its comments, as its next version.</summary>
    /// <param name="original">Content of the original's protocol.toml.</param>
    /// <param name="protocol">The same, read.</param>
    /// <param name="repeat">What is repeated.</param>
    public static RepeatedProtocol Full(
        ReadOnlyMemory<byte> original,
        StudyProtocol protocol,
        RepeatOf repeat
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var text = Utf8Text.Decode(Utf8Text.WithoutMark(original).Span).ReplaceLineEndings("\n");
        return new(
            VersionLine()
                .Replace(
                    RepeatLine().Replace(text, "", 1),
                    _ =>
                        $"version = {TomlLiteral.Quoted(NextVersion(protocol.Version))}\n\n# This study repeats a signed one in full.\n{Line(repeat)}",
                    1
                ),
            [],
            []
        );
    }

    /// <summary>A study of the approved windows at their longest times, by the limits and criteria of the original.</summary>
    /// <param name="original">Content of the original's protocol.toml.</param>
    /// <param name="protocol">The same, read.</param>
    /// <param name="repeat">What is repeated.</param>
    /// <param name="windows">The approved windows; at least one.</param>
    public static RepeatedProtocol Reduced(
        ReadOnlyMemory<byte> original,
        StudyProtocol protocol,
        RepeatOf repeat,
        ImmutableArray<RepeatedWindow> windows
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var entries =
            TomlDocument.Read(original, StudyBytes.ProtocolName, new QueryList())
            ?? throw new ArgumentException("No protocol.", nameof(original));
        var reduction = new ProtocolReduction(protocol, windows);
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"# REDUCED REPEAT of {repeat.Report}, made from its protocol: {OneLine(repeat.Reason)}\n#\n"
        );
        text.Append(
            "# The approved windows of the original at their longest times, judged by its limits and criteria. It shows that a new\n# lot of the same reagent changes nothing; a new reagent, principle, tube type, instrument or transport takes the full\n# study again. The numbers of specimens stand below with their reasons. Change them only upward, and\n# before the first specimen.\n#\n"
        );
        foreach (var line in reduction.Reasons())
        {
            text.Append("# ").Append(line).Append('\n');
        }

        text.Append('\n');
        text.Append(
            TomlWriting.Write(
                reduction.Of(entries, NextVersion(protocol.Version), repeat),
                [ProtocolKeys.Analytes.Name, ProtocolKeys.Limits.Name, ProtocolKeys.Criteria.Name]
            )
        );
        return new(text.ToString(), reduction.Numbers, reduction.Left);
    }

    private static string Line(RepeatOf repeat) =>
        $"{ProtocolKeys.Repeat.Name} = {{ {RepeatKeys.Report.Name} = {TomlLiteral.Quoted(repeat.Report)}, {RepeatKeys.Digest.Name} = {TomlLiteral.Quoted(repeat.Digest)}, {RepeatKeys.Tier.Name} = {TomlLiteral.Quoted(FileWords.RepeatTiers.Write(repeat.Tier))}, {RepeatKeys.Reason.Name} = {TomlLiteral.Quoted(repeat.Reason)} }}";

    /// <summary>"1" gives "2"; what is no number gets ".1".</summary>
    private static string NextVersion(string version) =>
        int.TryParse(version, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number < int.MaxValue
            ? (number + 1).ToString(CultureInfo.InvariantCulture)
            : version + ".1";

    private static string OneLine(string text) => text.ReplaceLineEndings(" ");

    [GeneratedRegex(
        "^version[ \\t]*=[ \\t]*(\"[^\"\n]*\"|'[^'\n]*')",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex VersionLine();

    [GeneratedRegex(
        "^(# This study repeats a signed one in full.\n)?repeat = \\{[^\n]*\\}\n",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex RepeatLine();
}
