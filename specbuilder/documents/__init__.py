"""The papers. A sheet says what stands on a paper, a format how it is set; neither knows the other."""
