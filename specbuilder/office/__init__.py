"""What happens to a job as a whole: what it is held against, what leaves the house, and what is still as it was.

The one room that brings together session, papers and disk; screens and line commands ask it and do nothing of it.
"""
