"""Floor 3: files. Reads the catalogue and the specs, writes the jobs; knows the model and nothing above it."""
