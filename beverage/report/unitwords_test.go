package report

import (
	"strings"
	"testing"
)

func TestUnitsInSentences(t *testing.T) {
	for in, want := range map[string]string{
		"Up to 7.54 barg at 66 °C against a rating of 6.20 barg.": "Up to 7.54 barg (109.4 psig) at 66 °C (150.8 °F) against a rating of 6.20 barg (89.9 psig).",
		"F of 1.2 min at 71.1 °C, z 10.8 C°":                      "F of 1.2 min at 71.1 °C (160 °F), z 10.8 C° (19.4 F°)",
		"F 12 min at 93.3 C, z 8.9 C":                             "F 12 min at 93.3 C (199.9 °F), z 8.9 C (16 F°)",
		"between 4 to 20 °C":                                      "between 4 to 20 °C (39.2 to 68 °F)",
		"at -2 °C":                                                "at -2 °C (28.4 °F)",
		"0 bara":                                                  "0 bara (0 psia)",
		"330 mL in 1 L":                                           "330 mL (11.2 fl oz) in 1 L (0.26 gal)",
		"2.8 g/L, 25 mL/L, 4 C, vitamin C, 21 CFR 114.3(b)":       "2.8 g/L, 25 mL/L, 4 C, vitamin C, 21 CFR 114.3(b)",
		"121.11 °C (250 °F)":                                      "121.11 °C (250 °F)",
		"run-66 °C.csv":                                           "run-66 °C.csv",
		"no figure":                                               "no figure",
	} {
		if got := besides(in); got != want {
			t.Errorf("%s\n got %s\nwant %s", in, got, want)
		}
	}
}

func TestSentencesAreToldInBothUnits(t *testing.T) {
	d := Told(Assessment(quince(), US), US)
	s := strings.Join(strings.Fields(text(t, Style{}, d)), " ")
	for _, want := range []string{"At 63 °C (145.4 °F), in the hottest zone", "may reach 6.6 barg (95.7 psig)", "its rating is 6.2 barg (89.9 psig)"} {
		if !strings.Contains(s, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	if c := sheet(t, d); !strings.Contains(c, "may reach 6.6 barg (95.7 psig)") {
		t.Error("the sheet tells one unit")
	}
	if a, b := text(t, Style{}, Told(Assessment(quince(), Metric), Metric)), text(t, Style{}, Assessment(quince(), Metric)); a != b {
		t.Error("metric sentences changed")
	}
}

func TestNamesKeepTheirUnits(t *testing.T) {
	l := someLogs()
	l.Logs[0].File, l.Logs[0].Probes[0].Name = "hold at 66 °C", "Can at 66 °C"
	for _, r := range Told(Lethality(l, US), US).Sheet.Rows {
		if strings.Contains(strings.Join(r, " "), "150.8") {
			t.Errorf("a name was rewritten: %v", r)
		}
	}
}
