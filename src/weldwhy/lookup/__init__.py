"""Looking things up: everything the rules know, found by its words, each with a page and links."""
