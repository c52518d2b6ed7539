"""How a ledger or figure is read: what is settled, what may go several ways, spans, lines and verdicts."""
