"""Closed classes of words around a colour that the colour rules share."""

THE = frozenset("the its his her that those these this every each".split())
BE = frozenset("is 's are 're was were".split())
FRAGMENT_LEADS = frozenset(
    "a an the sort kind of very quite really almost nearly practically just more rather pure "
    "only all good proper lovely nice beautiful big oh well but and as near".split()
)
COPULAS = BE | {"goes", "go", "comes", "come", "turns", "turn", "gone", "looks", "look", "has"}
