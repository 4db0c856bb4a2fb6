# Completion of featmatrix for PowerShell. In $PROFILE: featmatrix completion pwsh | Out-String | Invoke-Expression
Register-ArgumentCompleter -Native -CommandName featmatrix -ScriptBlock {
    param($word, $line, $cursor)
    # The program is asked with what stands behind its own name, up to the cursor; the syntax tree leaves out a blank at the end.
    $typed = $line.Extent.Text.PadRight($cursor).Substring(0, $cursor)
    $rest = $typed -replace '^\S+\s?', ''
    featmatrix "[suggest:$($rest.Length)]" "$rest" 2>$null |
        Where-Object { $_ -like "$word*" -and ($word -like '-*' -or $_ -notmatch '^[-/]') } |
        ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
}
