"""Floor 0: the values everything else is made of. Standard library only, no behaviour beyond their own laws."""
