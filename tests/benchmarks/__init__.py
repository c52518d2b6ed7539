"""Measurements that print ratios against a floor or a peer taken in the same run. Run: ``python -m tests.benchmarks``."""
