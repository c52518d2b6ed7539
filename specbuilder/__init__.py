"""From the counter to the workshop: a spec that fits together, that the van can carry, and that can be built from."""
