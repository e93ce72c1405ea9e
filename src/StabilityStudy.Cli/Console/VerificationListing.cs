using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes a verification for a person to read.</summary>
internal static class VerificationListing
{
    /// <summary>A protocol document or notice has no data, so nothing can have come before them.</summary>
    private const int FewestParts = 3;

    public static void Write(Terminal terminal, ReportVerification found)
    {
        var output = terminal.Out;
        if (found.StudyCode is { } code)
        {
            var (about, digest) = found.Document switch
            {
                DocumentKind.Report => ("Study", "inputs"),
                DocumentKind.Protocol => ("Study", "protocol"),
                DocumentKind.Notice => ("Notice about", "notice"),
            };
            output.WriteLine($"{about} {code}");
            output.WriteLine($"{digest} {found.InputDigest}");
            output.WriteLine();
        }

        var number = 0;
        foreach (var part in found.Parts)
        {
            number++;
            Lines(FormattableString.Invariant($"{number}. "), part.Question);
            Lines("   ", Word(part.Outcome));
            foreach (var sentence in part.Sentences)
            {
                Lines("   - ", sentence);
            }

            output.WriteLine();
        }

        foreach (var conclusion in found.Conclusions)
        {
            Lines("Computed again: ", conclusion);
        }

        output.WriteLine();
        if (found.Indication is { } indication)
        {
            Lines("", $"The signatures, in the words of ETSI EN 319 102-1: {indication}.");
        }

        Lines("", Verdict(found));
        if (found.Notice is { } notice)
        {
            Lines("", NoticeWords.Headline(notice));
        }

        if (found.Decision is { } decision)
        {
            foreach (var line in decision.Lines)
            {
                Lines("   ", line);
            }

            Lines("", decision.Headline + ".");
        }

        void Lines(string mark, string text)
        {
            var lines = TextLines.WrapLine(text, terminal.Width, new string(' ', mark.Length));
            output.WriteLine(mark + lines[0][mark.Length..]);
            foreach (var line in lines[1..])
            {
                output.WriteLine(line);
            }
        }
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
            PartOutcome.NotChecked =>
                "Nothing wrong was found, but not everything could be checked.",
            PartOutcome.Fails => "The verification FAILED. Do not rely on this file.",
        };
}
