# fish completion for tarry. Take it in with: tarry completions fish | source
complete -c tarry -a '(set -l line (commandline -cp); tarry "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null | string match -v "")'
