"""A second opinion on the sums: worked out from the data and the examples alone, with none of the program's code."""
