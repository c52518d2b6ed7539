"""A sum as a limit that a search can hold, and what absurd or missing data silence."""
