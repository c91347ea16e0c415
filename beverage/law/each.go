package law

import "slices"

// each reads a table into records of one type.
func each[T any](table string, read func(record) (T, error)) ([]T, error) {
	recs, err := readTable(table)
	if err != nil {
		return nil, err
	}
	out := make([]T, 0, len(recs))
	for _, rec := range recs {
		t, err := read(rec)
		if err != nil {
			return nil, err
		}
		out = append(out, t)
	}
	return out, nil
}

// keep returns those wanted, in a slice of its own.
func keep[T any](all []T, want func(T) bool) []T {
	var out []T
	for _, t := range all {
		if want(t) {
			out = append(out, t)
		}
	}
	return out
}

func has[T comparable](list []T, t T) bool { return slices.Contains(list, t) }
