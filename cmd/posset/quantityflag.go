package main

import "posset/beverage"

// quantityFlag is a flag whose value is a number with a unit, such as "4 C",
// "4C" or "2.4 barg". It is a pflag.Value; what is not given stays unknown.
type quantityFlag struct {
	at   *beverage.Given[float64]
	read func(string) (float64, error)
	kind string // of value, for the help: "TEMPERATURE"
	text string
}

func (q *quantityFlag) String() string { return q.text }

func (q *quantityFlag) Type() string { return q.kind }

func (q *quantityFlag) Set(s string) error {
	v, err := q.read(s)
	if err == nil {
		*q.at, q.text = beverage.Say(v), s
	}
	return err
}
