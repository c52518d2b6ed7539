"""The command line itself: which commands there are, what they take, their help, and what completes them."""
