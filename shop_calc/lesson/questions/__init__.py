"""The practice questions, one module a lesson; each has `QUESTIONS`."""
