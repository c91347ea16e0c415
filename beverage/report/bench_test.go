package report

import (
	"io"
	"testing"
)

func BenchmarkAssessmentText(b *testing.B) {
	for b.Loop() {
		if err := Text(io.Discard, Style{}, Assessment(quince(), Metric)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAssessmentJSON(b *testing.B) {
	a := quince()
	for b.Loop() {
		if err := JSON(io.Discard, a); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAssessmentHTML(b *testing.B) {
	for b.Loop() {
		if err := HTML(io.Discard, Assessment(quince(), Metric)); err != nil {
			b.Fatal(err)
		}
	}
}
