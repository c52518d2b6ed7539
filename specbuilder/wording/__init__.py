"""Floor 3: values become words here and nowhere else. Sees the model only; gives plain text, never markup."""
