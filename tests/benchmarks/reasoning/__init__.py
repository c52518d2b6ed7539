"""Our reasoning beside general engines, over the same models and counter visits."""
