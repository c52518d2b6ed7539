"""The pages: each lays out its lines and says what keys mean on them. No page knows the toolkit."""
