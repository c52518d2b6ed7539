# bash completion of specbuilder
_specbuilder() {
    local typed=() count=0 word current command="" flags="" waits="" last i
    for word in "${COMP_WORDS[@]:1:COMP_CWORD}"; do
        last=""
        if ((count > 0)); then last=${typed[count-1]}; fi
        if ((count > 0)) && [[ $word == [=@]* || ( -n $word && $last == *[=@] ) ]]; then
            typed[count-1]=$last$word
        else
            typed[count]=$word
            count=$((count + 1))
        fi
    done
    current=${typed[count-1]}
    for ((i = 0; i < count - 1; i++)); do
        case ${typed[i]} in
            @VALUED@) i=$((i + 1)); if ((i == count - 1)); then waits=1; fi ;;
            -*) ;;
            *) command=${typed[i]}; break ;;
        esac
    done
    case $command in
@CASES@
    esac
    COMPREPLY=()
    if [[ $current == -* ]]; then
        COMPREPLY=( $(compgen -W "$flags" -- "$current") )
    elif [[ -z $command && -z $waits ]]; then
        COMPREPLY=( $(compgen -W "@COMMANDS@" -- "$current") )
    else
        while IFS= read -r word; do
            COMPREPLY+=("$(printf %q "$word")")
        done < <("${COMP_WORDS[0]}" completion words -- "${typed[@]}" 2>/dev/null)
    fi
    if [[ $current == *[=@]* && $COMP_WORDBREAKS == *=* ]]; then
        last=${current%"${current##*[=@]}"}
        for i in "${!COMPREPLY[@]}"; do COMPREPLY[i]=${COMPREPLY[i]#"$last"}; done
    fi
    if ((${#COMPREPLY[@]} == 1)) && [[ ${COMPREPLY[0]} == *= ]]; then compopt -o nospace 2>/dev/null; fi
    return 0
}
complete -o default -F _specbuilder specbuilder
