using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>A verification for a person to read.</summary>
public static class VerificationText
{
    /// <summary>A protocol document or notice has no data, so nothing can have come before them.</summary>
    private const int FewestParts = 3;

    private const string NotChecked =
        "Nothing wrong was found, but not everything could be checked.";

    /// <summary>The lines, broken at a number of characters.</summary>
    public static ImmutableArray<string> Lines(ReportVerification found, int width)
    {
        ArgumentNullException.ThrowIfNull(found);
        var text = ImmutableArray.CreateBuilder<string>();
        if (found.StudyCode is { } code)
        {
            var (about, digest) = found.Document switch
            {
                DocumentKind.Report => ("Study", "inputs"),
                DocumentKind.Protocol => ("Study", "protocol"),
                DocumentKind.Notice => ("Notice about", "notice"),
            };
            text.Add($"{about} {code}");
            text.Add($"{digest} {found.InputDigest}");
            text.Add("");
        }

        AddParts(text, found.Parts, width);
        foreach (var conclusion in found.Conclusions)
        {
            Add("Computed again: ", conclusion);
        }

        text.Add("");
        if (found.Indication is { } indication)
        {
            Add("", $"The signatures, in the words of ETSI EN 319 102-1: {indication}.");
        }

        Add("", Verdict(found));
        if (found.Notice is { } notice)
        {
            Add("", NoticeWords.Headline(notice));
        }

        if (found.Decision is { } decision)
        {
            foreach (var line in decision.Lines)
            {
                Add("   ", line);
            }

            Add("", decision.Headline + ".");
        }

        return text.ToImmutable();

        void Add(string mark, string sentence) => AddTo(text, mark, sentence, width);
    }

    /// <summary>What was found about an inspection folder.</summary>
    public static ImmutableArray<string> Lines(InspectionVerification found, int width)
    {
        ArgumentNullException.ThrowIfNull(found);
        var text = ImmutableArray.CreateBuilder<string>();
        AddParts(text, found.Parts, width);
        AddTo(
            text,
            "",
            found.Outcome switch
            {
                PartOutcome.Holds => "All parts hold.",
                PartOutcome.NotChecked => NotChecked,
                PartOutcome.Fails => "The folder does NOT hold. Do not rely on it.",
            },
            width
        );
        if (found.IndexSha256 is { } digest)
        {
            AddTo(
                text,
                "",
                $"SHA-256 of {InspectionFiles.Index}, to be compared with the one noted when the folder was made:",
                width
            );
            text.Add(digest);
        }

        return text.ToImmutable();
    }

    private static void AddParts(
        ImmutableArray<string>.Builder text,
        ImmutableArray<VerifiedPart> parts,
        int width
    )
    {
        foreach (var (i, part) in parts.Index())
        {
            AddTo(text, FormattableString.Invariant($"{i + 1}. "), part.Question, width);
            AddTo(text, "   ", Word(part.Outcome), width);
            foreach (var sentence in part.Sentences)
            {
                AddTo(text, "   - ", sentence, width);
            }

            text.Add("");
        }
    }

    private static void AddTo(
        ImmutableArray<string>.Builder text,
        string mark,
        string sentence,
        int width
    )
    {
        var lines = TextLines.WrapLine(sentence, width, new string(' ', mark.Length));
        text.Add(mark + lines[0][mark.Length..]);
        text.AddRange(lines[1..]);
    }

    /// <summary>An outcome in words.</summary>
    public static string Word(PartOutcome outcome) =>
        outcome switch
        {
            PartOutcome.Holds => "HOLDS",
            PartOutcome.NotChecked => "NOT FULLY CHECKED",
            PartOutcome.Fails => "FAILS",
        };

    private static string Verdict(ReportVerification found) =>
        found.Outcome switch
        {
            PartOutcome.Holds when found.Parts.Length == FewestParts => "All three parts hold.",
            PartOutcome.Holds => "All four parts hold.",
            PartOutcome.NotChecked when found.IsOfLaterVersion =>
                "What the file states was NOT checked: it says that a later version of the program made it. Do not rely on it before that version, or a later one, has verified it.",
            PartOutcome.NotChecked => NotChecked,
            PartOutcome.Fails => "The verification FAILED. Do not rely on this file.",
        };
}
