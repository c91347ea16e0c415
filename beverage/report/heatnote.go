package report

import "posset/beverage"

func heatNoteItems(notes []beverage.HeatNote) Items {
	var items Items
	for _, n := range notes {
		items = append(items, Item{ID: join(", ", n.What, string(n.Market)), Title: n.Text, Foot: n.Source})
	}
	return items
}

// heatNoteMeans says what the figures are not.
func heatNoteMeans(notes []beverage.HeatNote) Para {
	if len(notes) == 0 {
		return ""
	}
	return "figures beside published ones; none is credited, and none clears a finding or meets a target"
}
