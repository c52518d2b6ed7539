"""One file (or folder) a sheet: from a case to a paper made of blocks."""
