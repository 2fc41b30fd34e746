"""Questions: what is asked, what each answer earns as feedback, and how a typed number is judged. Data only, no HTML."""
