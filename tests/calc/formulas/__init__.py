"""Formulas against worked values, independent computations, and outside what they are valid for."""
