"""Floor 5: the terminal app. It paints what a report holds and sends edits back; it computes nothing of the trade."""
