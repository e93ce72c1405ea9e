using System.Buffers;
using System.Text;
using StabilityStudy.Cli.Folders;

namespace StabilityStudy.Cli.Console;

/// <summary>Where the program writes, and what that place can show.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Errors and progress.</param>
/// <param name="ShowsProgress">Whether a person watches <paramref name="Error"/>; progress is silent otherwise.</param>
/// <param name="UsesColor">Whether <paramref name="Out"/> may carry color.</param>
/// <param name="Width">Columns to wrap at.</param>
public sealed record Terminal(
    TextWriter Out,
    TextWriter Error,
    bool ShowsProgress,
    bool UsesColor,
    int Width
)
{
    /// <summary>Columns when the output is not a terminal.</summary>
    public const int DefaultWidth = 80;

    private const int WidestText = 100;
    private readonly ScreenWriter _out = ScreenWriter.Over(Out);
    private readonly ScreenWriter _plainOut = ScreenWriter.Over(new PlainWriter(Out));
    private readonly ScreenWriter _error = ScreenWriter.Over(Error);

    /// <summary>Results. What is written here passes the filter that keeps a text from steering the screen; there is no other way out.</summary>
    public TextWriter Out => IsPlain ? _plainOut : _out;

    /// <summary>Errors and progress, through the same filter.</summary>
    public TextWriter Error => _error;

    /// <summary>The clock that locks, signatures and the record take their time from.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Who works here, as far as the computer knows.</summary>
    public string User { get; init; } = Environment.UserName;

    /// <summary>Whether a person reads <see cref="Out"/> at a terminal, so that a sentence is wrapped there.</summary>
    public bool IsScreen { get; init; }

    /// <summary>Whether <see cref="Out"/> is read aloud or shows ASCII only: no signs beyond it, and no lines that only rule off.</summary>
    public bool IsPlain { get; init; }

    /// <summary>Passphrase of a signing key from the environment; null when it is not set.</summary>
    public string? Passphrase { get; init; }

    /// <summary>Folder in which the program may keep what it can find again; null where it keeps nothing.</summary>
    public string? CacheFolder { get; init; }

    /// <summary>Lets no interrupt end the process any more: for what is written together and then told as done.</summary>
    public Action HoldInterrupts { get; init; } = () => { };

    /// <summary>Asks a person for a secret without showing it; null where nobody can be asked.</summary>
    public Func<string, string>? Ask { get; init; }

    /// <summary>Asks a person for a line; gives null when the input ends. Null itself where nobody can be asked.</summary>
    public Func<string, string?>? AskLine { get; init; }

    /// <summary>The process's own console.</summary>
    public static Terminal OfProcess()
    {
        var isTerminal = !System.Console.IsOutputRedirected;
        var wantsNoColor = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return new Terminal(
            System.Console.Out,
            System.Console.Error,
            !System.Console.IsErrorRedirected,
            isTerminal && !wantsNoColor,
            isTerminal ? Math.Clamp(System.Console.WindowWidth, 60, WidestText) : DefaultWidth
        )
        {
            IsScreen = isTerminal,
            IsPlain = isTerminal && PlainWriter.IsWanted(Environment.GetEnvironmentVariable),
            CacheFolder = CacheOfUser(),
            HoldInterrupts = Interrupts.Hold,
            Passphrase = Environment.GetEnvironmentVariable(KeyFile.Variable),
            Ask = CanAsk ? AskSecretly : null,
            AskLine = CanAsk ? AskOpenly : null,
        };
    }

    /// <summary>The folder for caches of the program; null where the system names no such place.</summary>
    private static string? CacheOfUser()
    {
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        var caches =
            Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { Length: > 0 } named ? named
            : OperatingSystem.IsWindows()
                ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : home.Length > 0 ? Path.Combine(home, ".cache")
            : "";
        return caches.Length > 0 ? Path.Combine(caches, "stability-study") : null;
    }

    private static bool CanAsk =>
        !System.Console.IsInputRedirected && !System.Console.IsErrorRedirected;

    private static string? AskOpenly(string question)
    {
        ScreenWriter.Over(System.Console.Error).Write(question);
        return System.Console.In.ReadLine();
    }

    private static string AskSecretly(string question)
    {
        var screen = ScreenWriter.Over(System.Console.Error);
        screen.Write(question);
        var secret = new StringBuilder();
        while (System.Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } pressed)
        {
            if (pressed.Key == ConsoleKey.Backspace)
            {
                secret.Length = Math.Max(0, secret.Length - 1);
            }
            else
            {
                secret.Append(pressed.KeyChar);
            }
        }

        screen.WriteLine();
        return secret.ToString();
    }

    /// <summary>A result as JSON.</summary>
    /// <param name="utf8">JSON as a writer gave it, with or without a last line feed.</param>
    public void WriteJson(ReadOnlySpan<byte> utf8)
    {
        var screen = new JsonScreen(_out);
        screen.Write(utf8.TrimEnd((byte)'\n'));
        screen.Finish();
        _out.WriteLine();
    }

    /// <summary>A result as JSON that is shown while it is made, so that it need not be held as a whole.</summary>
    /// <param name="write">Writes the JSON, in UTF-8, with its last line feed.</param>
    public void WriteJson(Action<IBufferWriter<byte>> write)
    {
        var screen = new JsonScreen(_out);
        write(screen);
        screen.Finish();
    }

    /// <summary>Writes a word of the program's own into the results, in a color where the place shows colors.</summary>
    /// <param name="word">The word.</param>
    /// <param name="style">The color, as the parameters of the terminal's control sequence; null for none.</param>
    public void WriteWord(string word, string? style)
    {
        if (UsesColor && style is not null)
        {
            _out.WriteStyled(word, style);
        }
        else
        {
            _out.Write(word);
        }
    }

    /// <summary>Says what is being done, when a person watches.</summary>
    public void Progress(string doing)
    {
        if (ShowsProgress)
        {
            Error.WriteLine(doing + " …");
        }
    }
}
