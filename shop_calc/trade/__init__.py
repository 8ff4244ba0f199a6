"""The job itself: piece, form, mix, batch, day, cure and plan."""
