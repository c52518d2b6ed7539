"""Money in whole pence."""

_PARTS = 100_000
"""Parts of a whole in which the tax rate is counted: a thousandth of a per cent, exactly."""


def gross_pence(net_pence: int, vat_percent: float) -> int:
    """A net sum with tax, rounded half up once. Result in whole pence.

    Equation: ``floor(net_pence * (1 + vat_percent / 100) + 1/2)``, in whole numbers so that a half is always a half.
    Valid for: tax rates given to a thousandth of a per cent; use it on the total, never line by line.
    Source: house rule: one rounding, on the total.
    Confidence: known; the tax rate must be checked on the day of the invoice.

    >>> gross_pence(12, 20.0), gross_pence(1_000_000, 20.0), gross_pence(2, 25.0)
    (14, 1200000, 3)
    """
    rate = _PARTS + round(vat_percent * _PARTS / 100)
    return (2 * net_pence * rate + _PARTS) // (2 * _PARTS)
