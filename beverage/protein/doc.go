// Package protein knows what the proteins of beverages are made of and what
// acid, heat, salt and time do to them: net charge, the pH of zero charge, heat
// denaturation along a temperature history, the published windows within which a
// protein drink stays a drink, and what a gram of protein feeds.
//
// It holds figures and pure functions, and judges nothing. What is not published
// is said to be unknown: an unknown protein has no composition, a window that does
// not exist is not found, and a rate outside the conditions it was measured in is
// refused with the reason. Every figure stands in a data file with its source.
package protein
