#compdef tarry
# zsh completion for tarry. Take it in with: source <(tarry completions zsh)
_tarry() {
    local -a offered
    offered=(${(f)"$(tarry "[suggest:$CURSOR]" "$BUFFER" 2>/dev/null)"})
    if (( ${#offered} )); then compadd -a offered; else _files; fi
}
compdef _tarry tarry
