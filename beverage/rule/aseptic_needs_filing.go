package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "aseptic-needs-filing", Level: review,
	Title: "Aseptic processing is registered and filed before the first pack",
	Means: "An aseptic process is filed with its holding tube, its flow, its sterilization of packs and the source of its figures. Filing is not approval.",
	Clear: "Choose a plant that is registered and whose aseptic system has a filed process for this kind of product; file this product and pack.",
	Law:   []string{"us-lacf-filing", "us-acidified-filing", "us-filing-forms", "us-aseptic-definition", "codex-aseptic"},
	Check: func(f *facts.Facts) []Hit {
		markets := filedIn(f)
		if f.Process.Route != beverage.Aseptic || len(markets) == 0 {
			return nil
		}
		h := Hit{Detail: "Aseptic filling of a drink of class " + f.Class.String() + ".", Markets: markets}
		if f.Class == beverage.Acidified {
			h.Row = "us-acidified-filing"
			h.Detail = "Aseptic filling of a drink of class acidified: its process is filed as one of an acidified food."
		}
		return []Hit{h}
	},
})
