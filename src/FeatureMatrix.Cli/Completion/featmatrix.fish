# Completion of featmatrix for fish. Save it as ~/.config/fish/completions/featmatrix.fish
function __featmatrix_words
    # The program is asked with what stands behind its own name, up to the cursor.
    set -l rest (string replace --regex '^\S+\s?' '' -- (commandline --cut-at-cursor --current-process))
    set -l word (commandline --current-token --cut-at-cursor)
    set -l found (featmatrix "[suggest:"(string length -- "$rest")"]" "$rest" 2>/dev/null | string match --invert --regex '^/')
    # Options are offered once a hyphen is typed; files are offered where nothing else fits.
    string match --quiet -- '-*' "$word"; or set found (string match --invert -- '-*' $found)
    if set -q found[1]
        printf '%s\n' $found
    else
        __fish_complete_path "$word"
    end
end
complete --command featmatrix --no-files --arguments '(__featmatrix_words)'
