"""Time in the workshop."""


def circuit_hours_h(circuits: float, per_circuit_h: float) -> float:
    """Time for pulling and connecting cable runs. Result in hours.

    Equation: ``circuits * per_circuit_h``, with the hours per circuit of all work steps added.
    Valid for: 12 V and mains runs alike; a house average.
    Source: house plan of work: 0.35 h in first fix and 0.25 h in second fix.
    Confidence: estimate; to be replaced by hours booked.

    >>> round(circuit_hours_h(20, 0.35 + 0.25), 2)
    12.0
    """
    return circuits * per_circuit_h
