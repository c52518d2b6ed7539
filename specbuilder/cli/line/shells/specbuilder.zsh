#compdef specbuilder
_specbuilder() {
    local -a commands offered
    local flags="" command="" waits="" i
    commands=(
@DESCRIBED@
    )
    for ((i = 2; i < CURRENT; i++)); do
        case ${words[i]} in
            @VALUED@) i=$((i + 1)); if ((i == CURRENT)); then waits=1; fi ;;
            -*) ;;
            *) command=${words[i]}; break ;;
        esac
    done
    case $command in
@CASES@
    esac
    if [[ ${words[CURRENT]} == -* ]]; then
        compadd -- ${=flags}
    elif [[ -z $command && -z $waits ]]; then
        _describe command commands
    else
        offered=("${(@f)$(${words[1]} completion words -- "${(@)words[2,CURRENT]}" 2>/dev/null)}")
        offered=(${offered:#})
        if (( ${#offered} )); then
            compadd -S '' -- ${(M)offered:#*=}
            compadd -- ${offered:#*=}
        else
            _files
        fi
    fi
}
if (( ! $+functions[compdef] )); then autoload -Uz compinit && compinit; fi
compdef _specbuilder specbuilder
