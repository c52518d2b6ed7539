# fish completion of specbuilder
function __specbuilder_offered
    set -l typed (commandline -opc) (commandline -ct)
    $typed[1] completion words -- $typed[2..-1] 2>/dev/null
end
complete -c specbuilder -a '(__specbuilder_offered)'
@LINES@
