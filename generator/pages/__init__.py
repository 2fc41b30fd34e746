"""Pages: Markdown that any parser can read, made of facts, charts and questions; the assets that go with them."""
