"""Piece, layers and form: geometry of the job."""
