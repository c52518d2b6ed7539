"""Masses: the loaded van, its axles and sides, load cases, the weighbridge, and what the roof carries."""
