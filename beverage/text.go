package beverage

// Text is words that may not be known: empty, it prints as null.
type Text string
