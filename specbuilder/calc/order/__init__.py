"""What the order hangs on: price, weeks, hours, the age of the quote."""
