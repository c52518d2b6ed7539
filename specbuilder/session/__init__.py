"""Floor 2: a spec laid over a catalogue. Pure: no file, no clock, no toolkit."""
