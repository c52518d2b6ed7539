"""Floor 1: the rule graph and what follows from it. Pure; knows the model and networkx, never ``calc``."""
