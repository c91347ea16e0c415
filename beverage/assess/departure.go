package assess

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// departures are all departures from the limits of the scheduled process: by
// each record, and once each where no record speaks of a limit.
func departures(f *facts.Facts) []beverage.Departure {
	list := []beverage.Departure{}
	for _, c := range f.Limits() {
		if c.Outcome == beverage.Meets {
			continue
		}
		found := byRecord(f, c.Limit)
		if len(found) == 0 {
			found = []beverage.Departure{unrecorded(c)}
		}
		list = append(list, found...)
	}
	return append(list, together(f, list)...)
}

// together adds up the departures of each record.
func together(f *facts.Facts, list []beverage.Departure) []beverage.Departure {
	var sums []beverage.Departure
	for _, run := range f.Records.Logs {
		var own []beverage.Departure
		for _, d := range list {
			if d.File == run.Result.File {
				own = append(own, d)
			}
		}
		sums = append(sums, facts.Together(own, f.Records.Target)...)
	}
	return sums
}

// byRecord leaves out what a record does not show: the limit was then held
// against something else.
func byRecord(f *facts.Facts, l beverage.CriticalLimit) []beverage.Departure {
	var list []beverage.Departure
	for i := range f.Records.Logs {
		for _, d := range f.Records.Logs[i].Departures(l, f.Records.Target) {
			if d.Column != "" {
				list = append(list, d)
			}
		}
	}
	return list
}

func unrecorded(c facts.LimitCheck) beverage.Departure {
	return beverage.Departure{What: string(c.Limit.What), Limit: c.Limit.Text, Outcome: c.Outcome, Why: c.Why, Credits: []beverage.DepartureCredit{}}
}

// The rows of law on what becomes of a lot that departed.
const (
	lowAcidDeparture   = "us-lacf-deviation"
	acidifiedDeparture = "us-acidified-deviation"
	asepticDeparture   = "us-aseptic-drop"
)

// dispositions are what the texts ask for, by the class and the route of the
// drink; of a drink whose class is not decided both texts speak.
func dispositions(class beverage.Class, route beverage.Route) []beverage.Disposition {
	var ids []string
	if class != beverage.Acidified {
		ids = append(ids, lowAcidDeparture)
	}
	if class != beverage.LowAcid {
		ids = append(ids, acidifiedDeparture)
	}
	if route == beverage.Aseptic {
		ids = append(ids, asepticDeparture)
	}
	var list []beverage.Disposition
	for _, id := range ids {
		r, ok := law.Get(id)
		if !ok {
			continue
		}
		for _, m := range r.Markets {
			list = append(list, beverage.Disposition{Market: m, Text: r.Statement, Source: r.Cite(), Basis: r.Basis})
		}
	}
	return list
}
