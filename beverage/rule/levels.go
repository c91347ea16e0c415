package rule

import "posset/beverage"

// The levels by their short names, for declarations.
const (
	stop   = beverage.Stop
	review = beverage.Review
	note   = beverage.Note
)
