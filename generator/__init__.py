"""Study-site generator: YAML records in, checked numbers, charts, questions and pages out."""
