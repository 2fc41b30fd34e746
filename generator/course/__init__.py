"""The course: its file, its words, misconceptions and sources, and every reference between records."""
