// Package law holds, as data, what the law, published guidance and published
// science say about a drink: limits, terms, filings, statements and heat
// treatments, by market. Every figure belongs to a Row that names its section,
// the date of the text that was read, its basis and its markets; nothing
// outside this package needs a number of its own.
//
// A Row is a digest in our own words, not the text of a law. Rows from memory,
// from a secondary page or from common practice say so in their citation.
//
// The data are tab-separated tables under data/, read once, when first asked
// for. The tests hold that they are whole, so what is looked up here by a fixed
// id is always there.
package law
