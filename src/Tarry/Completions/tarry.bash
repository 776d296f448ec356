# bash completion for tarry. Take it in with: source <(tarry completions bash)
_tarry() {
    local IFS=$'\n'
    COMPREPLY=($(compgen -W "$(tarry "[suggest:$COMP_POINT]" "$COMP_LINE" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
}
# Where the program has nothing to offer, files: a study is a folder.
complete -o default -F _tarry tarry
