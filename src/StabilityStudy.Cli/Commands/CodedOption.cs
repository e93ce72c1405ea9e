using StabilityStudy.Core.Study;

namespace StabilityStudy.Cli.Commands;

/// <summary>Options that give a code and what it stands for: "AN1=Optical analyzer".</summary>
internal static class CodedOption
{
    /// <summary>"LS1=Lab Scientist One, lab scientist".</summary>
    public static Person PersonOf(string text)
    {
        var (code, words) = Split(text, "--person", "LS1=Lab Scientist One, lab scientist");
        var comma = words.LastIndexOf(", ", StringComparison.Ordinal);
        return comma > 0
            ? new Person(code, words[..comma], words[(comma + 2)..])
            : throw Unfit("--person", text, "LS1=Lab Scientist One, lab scientist");
    }

    /// <summary>"AN1=Optical analyzer".</summary>
    public static Instrument InstrumentOf(string text)
    {
        var (code, name) = Split(text, "--instrument", "AN1=Optical analyzer");
        return new Instrument(code, name);
    }

    /// <summary>"R-1=aPTT reagent, aPTT, 2027-01-31", the last day of use being left out where it is not known.</summary>
    public static Lot LotOf(string text)
    {
        const string Example = "R-1=aPTT reagent, aPTT, 2027-01-31";
        var (code, words) = Split(text, "--lot", Example);
        return words.Split(", ") switch
        {
            [var kind, var analyte] => new Lot(code, kind, analyte, null),
            [var kind, var analyte, var day] when DayText.Read(day) is { } last => new Lot(
                code,
                kind,
                analyte,
                last
            ),
            _ => throw Unfit("--lot", text, Example),
        };
    }

    private static (string Code, string Words) Split(string text, string option, string example)
    {
        var sign = (TextOption.OneLine(text, option) ?? "").IndexOf('=', StringComparison.Ordinal);
        return sign > 0 && sign < text.Length - 1
            ? (text[..sign].Trim(), text[(sign + 1)..].Trim())
            : throw Unfit(option, text, example);
    }

    private static UsageException Unfit(string option, string text, string example) =>
        new($"{option}: \"{text}\" cannot be read. Write it as in {option} \"{example}\".");
}
