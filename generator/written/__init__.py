"""Written questions: their records, what is wrong with them, and the marking guide that is worked out from facts and chains."""
