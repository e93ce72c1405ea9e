using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>
/// What a command must know: from its options, else from the person at the terminal. Where nobody can be asked, what is
/// proposed is taken, and what has no proposal is named as missing.
/// </summary>
internal sealed class Questions(Terminal terminal)
{
    private readonly List<string> _missing = [];

    /// <summary>Whether a person can be asked.</summary>
    public bool CanAsk => terminal.AskLine is not null;

    /// <summary>An answer.</summary>
    /// <param name="given">The value of its option; null when it is not given.</param>
    /// <param name="option">The option that answers it: "--facility".</param>
    /// <param name="question">The question, without a question mark: "Facility".</param>
    /// <param name="proposed">What an empty answer means; null where an answer is needed.</param>
    /// <param name="problem">Why an answer will not do, as a sentence; null where it will.</param>
    /// <param name="isAssumed">Whether the proposal also stands where nobody can be asked.</param>
    /// <exception cref="UsageException">The value of the option will not do.</exception>
    /// <exception cref="OperationCanceledException">The input ended.</exception>
    public string Of(
        string? given,
        string option,
        string question,
        string? proposed,
        Func<string, string?> problem,
        bool isAssumed = true
    )
    {
        if (given is not null)
        {
            return problem(given) is { } why ? throw new UsageException($"{option}: {why}") : given;
        }

        if (terminal.AskLine is not { } ask)
        {
            if (proposed is null || !isAssumed)
            {
                _missing.Add(option);
            }

            return proposed ?? "";
        }

        while (true)
        {
            var shown = proposed is { Length: > 0 } ? $" [{proposed}]" : "";
            var answer =
                ask(question + shown + ": ")?.Trim() ?? throw new OperationCanceledException();
            if (answer.Length == 0 && proposed is not null)
            {
                return proposed;
            }

            if ((answer.Length == 0 ? "An answer is needed." : problem(answer)) is not { } why)
            {
                return answer;
            }

            Say(why, "  ");
        }
    }

    /// <summary>Tells the person who is asked something.</summary>
    public void Say(string text, string indent = "")
    {
        foreach (var line in TextLines.WrapLine(text, terminal.Width, indent))
        {
            terminal.Error.WriteLine(line);
        }
    }

    /// <summary>Ends where something is missing and nobody can be asked.</summary>
    /// <exception cref="UsageException">Options are missing.</exception>
    public void RequireAnswers()
    {
        if (_missing.Count > 0)
        {
            throw new UsageException(
                $"Nobody can be asked here, and these options are missing: {string.Join(", ", _missing)}. Nothing was written. Add --help to see how each is written."
            );
        }
    }
}
