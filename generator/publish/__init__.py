"""From pages on disk to a site in its place: the only room that knows MkDocs and its theme."""
