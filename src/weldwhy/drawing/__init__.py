"""Pictures: what the rules say of a drawing, painted on a canvas of half cells."""
