"""The circuit schedule: cable, fuse and protection of every run."""
