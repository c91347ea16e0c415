package law

// DesignTarget is a target that law, guidance or custom sets against an
// organism: Minutes at TrefC for Reductions decimal reductions. ZBelowC is the
// z below TrefC where the source has another one there, else it equals ZC.
// Reductions is 0 where the source names none.
type DesignTarget struct {
	RowID       string
	Minutes     float64
	TrefC       float64 // °C
	ZC, ZBelowC float64 // C°
	Reductions  float64
}

// TargetOf reads the target of a row: its F or F0 with reference temperature
// and z. False where the row has no whole target.
func TargetOf(rowID string) (DesignTarget, bool) {
	r, ok := Get(rowID)
	if !ok {
		return DesignTarget{}, false
	}
	minutes, ok := r.Value("F")
	if !ok {
		minutes, ok = r.Value("F0")
	}
	tref, haveT := r.Value("reference temperature")
	z, haveZ := r.Value("z")
	if !ok || !haveT || !haveZ {
		return DesignTarget{}, false
	}
	t := DesignTarget{RowID: rowID, Minutes: minutes, TrefC: tref, ZC: z, ZBelowC: z}
	if below, ok := r.Value("z below"); ok {
		t.ZBelowC = below
	}
	t.Reductions, _ = r.Value("reduction")
	return t, true
}

// DesignTargets returns every row's target, in the order of the tables.
func DesignTargets() []DesignTarget {
	var out []DesignTarget
	for _, r := range open().rows {
		if t, ok := TargetOf(r.ID); ok {
			out = append(out, t)
		}
	}
	return out
}
