namespace StabilityStudy.Cli.Help;

/// <summary>
/// What a shell needs to complete commands, options and their words. Each script hands the line to the program itself, so that it knows what the installed version knows;
/// where the program proposes nothing, the shell proposes files.
/// </summary>
internal static class CompletionScript
{
    /// <summary>Completion for a shell by its name.</summary>
    public static readonly ImmutableSortedDictionary<string, string> ByShell = new[]
    {
        new KeyValuePair<string, string>("bash", Bash),
        new("zsh", Zsh),
        new("fish", Fish),
        new("powershell", PowerShell),
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private const string Bash = """
        # Completion of stability-study for bash.
        _stability_study() {
            local word=${COMP_WORDS[COMP_CWORD]}
            local IFS=$'\n'
            COMPREPLY=($(compgen -W "$(stability-study "[suggest:$COMP_POINT]" "$COMP_LINE" 2>/dev/null)" -- "$word"))
        }
        complete -o default -F _stability_study stability-study
        """;

    private const string Zsh = """
        #compdef stability-study
        # Completion of stability-study for zsh.
        _stability_study() {
            local -a words_found
            words_found=(${(f)"$(stability-study "[suggest:$CURSOR]" "$BUFFER" 2>/dev/null)"})
            if (( ${#words_found} )); then
                compadd -- $words_found
            else
                _files
            fi
        }
        if [ "$funcstack[1]" = "_stability_study" ]; then
            _stability_study "$@"
        else
            compdef _stability_study stability-study
        fi
        """;

    private const string Fish = """
        # Completion of stability-study for fish.
        function __stability_study_words
            set -l line (commandline -cp)
            stability-study "[suggest:"(string length -- $line)"]" "$line" 2>/dev/null
        end
        complete -c stability-study -a '(__stability_study_words)'
        """;

    private const string PowerShell = """
        # Completion of stability-study for PowerShell.
        Register-ArgumentCompleter -Native -CommandName stability-study -ScriptBlock {
            param($word, $line, $position)
            stability-study "[suggest:$position]" "$line" |
                Where-Object { $_ -like "$word*" } |
                ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
        }
        """;
}
