"""Floor 5: line commands. Owns stdout, stderr and exit codes."""
