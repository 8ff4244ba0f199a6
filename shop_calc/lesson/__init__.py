"""What a learner sees: pictures, blocks, practice."""
