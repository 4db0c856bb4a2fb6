#compdef featmatrix
# Completion of featmatrix for zsh. In ~/.zshrc, after compinit: source <(featmatrix completion zsh)
_featmatrix() {
  # The program is asked with what stands behind its own name, up to the cursor.
  local rest="${${LBUFFER#"${words[1]}"}# }"
  local -a found
  found=("${(@f)$("${words[1]}" "[suggest:${#rest}]" "$rest" 2>/dev/null)}")
  found=(${found:#/*})
  # Options are offered once a hyphen is typed; files are offered where nothing else fits.
  [[ $PREFIX == -* ]] || found=(${found:#-*})
  compadd -a found || _files
}
compdef _featmatrix featmatrix
