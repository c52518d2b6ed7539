"""The build as the floor sees it: where each part sits, what is cut and run, in the order of the work.

Files and papers are both made from it. It knows the model only.
"""
