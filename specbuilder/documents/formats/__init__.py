"""One file a format. Each sets any paper from its blocks, and the same paper always in the same bytes."""
