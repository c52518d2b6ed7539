"""Cases of the shipped rules: one table a rule, in one file for each step of the walk.

A case is a short story of one rule::

    [case.RULE-ID]
    start = "saturday-family"           a file of examples/; left out: a spec in which nothing was said
    begin = ["take no-galley"]          what is said before, so that there is something to break
    fire = ["take bench-three"]         what breaks the rule; before it the rule is not broken
    raw = true                          fire is written into the spec as a file might hold it: no follower mends it
    without = "OPTION TAG"              fire is judged in a catalogue in which the option lacks the tag: for rules that
                                        guard what is true of every option shipped
    subjects = ["bench-three"]          exactly the choices the finding names, in the order they were taken
    among = ["bench-three"]             instead, where it names more (every line of a sum, what is there already of a
                                        list of needs): these are among them
    keys = ["adults"]                   exactly the answers it names
    wanted = ["table"]                  exactly the capabilities of which one is missing
    reading = "cross-width"             the ledger or figure it is about
    cure = ["take bench-two"]           what mends it: the rule holds

Sayings (PLACE is left, right or rear)::

    take OPTION[@PLACE][*COUNT]         leave-out OPTION[@PLACE]
    move OPTION PLACE                   count OPTION COUNT
    answer KEY VALUE[,VALUE]            forget KEY
    van-data FIELD VALUE                owner OPTION ours|theirs
    sheet OPTION MASS_KG WATTS_W CUT_OUT DATE
    question TEXT [| OWNER | DATE]
"""
