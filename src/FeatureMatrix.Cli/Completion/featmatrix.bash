# Completion of featmatrix for bash. In ~/.bashrc: source <(featmatrix completion bash)
_featmatrix() {
  # The program is asked with what stands behind its own name, up to the cursor.
  local line=${COMP_LINE:0:COMP_POINT} rest whole kept one words
  rest=${line#"${COMP_WORDS[0]}"}
  rest=${rest# }
  # Bash breaks words at @ too and replaces only what follows; ids of drivers have one.
  whole=${line##*[[:space:]]}
  kept=${whole%"${COMP_WORDS[COMP_CWORD]}"}
  mapfile -t words < <(compgen -W "$("${COMP_WORDS[0]}" "[suggest:${#rest}]" "$rest" 2>/dev/null)" -- "$whole")
  COMPREPLY=()
  for one in "${words[@]}"; do
    # Options are offered once a hyphen is typed; files are offered where nothing else fits.
    if [[ $whole == -* || $one != [-/]* ]]; then
      COMPREPLY+=("${one#"$kept"}")
    fi
  done
}
complete -o bashdefault -o default -F _featmatrix featmatrix
