"""What the lessons move: model, words and drawing of each lesson's block, one module a lesson."""
