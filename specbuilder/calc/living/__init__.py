"""Warmth, fuel, gas, fresh air and water."""
