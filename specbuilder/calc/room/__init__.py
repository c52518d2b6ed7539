"""Room: seats, beds, gaps, named places, and the height of the closed van."""
