# fish completion for tarry. Take it in with: tarry completions fish | source
complete -c tarry -a '(tarry "[suggest:"(commandline -C)"]" (commandline -p) 2>/dev/null)'
