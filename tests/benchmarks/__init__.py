"""Measurements that print ratios to a floor taken in the same run: ``python -m tests.benchmarks``."""
