package report

import (
	"html"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/report/chart"
)

// pictures are those of a document, with the title of their section.
func pictures(d Doc) map[string][]Picture {
	out := map[string][]Picture{}
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			if p, ok := b.(Picture); ok {
				out[s.Title] = append(out[s.Title], p)
			}
		}
	}
	return out
}

func TestPicturesStandWhereTheyBelong(t *testing.T) {
	for name, c := range map[string]struct {
		doc  Doc
		want map[string]int
	}{
		"check":     {Assessment(quince(), Metric), map[string]int{"Closed pack": 1, "Picture of logs/run-1.csv": 1, "Net charge of a molecule over pH": 1, "Lethality against protein unfolded": 2}},
		"acid":      {Acid(someAcid(), Metric), map[string]int{"Titration curve": 1}},
		"lethality": {Lethality(someLogs(), US), map[string]int{"Picture of logs/run-1.csv": 1, "Picture of logs/run-2.csv": 1}},
		"protein":   {Protein(someProtein(), Metric), map[string]int{"Findings over pH and temperature of the hold": 1, "Net charge of a molecule over pH": 1, "Lethality against protein unfolded": 2}},
		"pack":      {Carbonation(someGas(), US), map[string]int{"Closed pack": 1}},
		"gas":       {Carbonation(gasDrawn(), US), map[string]int{"Over temperature": 1}},
	} {
		got := map[string]int{}
		for title, ps := range pictures(c.doc) {
			got[title] = len(ps)
			for _, p := range ps {
				if p.Drawn() == "" || len(p.Data.Rows) == 0 {
					t.Errorf("%s, %s: not drawn, or without its data", name, title)
				}
			}
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

func TestPicturesAreNamedAndTheirDataFoldedUnderThem(t *testing.T) {
	s := page1(t, Assessment(quince(), Metric), Acid(someAcid(), Metric))
	figures := strings.Count(s, "<figure")
	for _, part := range []string{`role="img" aria-labelledby="p`, "<summary>The data behind the picture</summary>", "<figcaption>"} {
		if n := strings.Count(s, part); n != figures || n != 6 {
			t.Errorf("%d figures, %d of %s", figures, n, part)
		}
	}
	for _, m := range regexp.MustCompile(`aria-(?:labelledby|describedby)="([^"]+)"`).FindAllStringSubmatch(s, -1) {
		if strings.Count(s, ` id="`+m[1]+`"`) != 1 {
			t.Errorf("%s names not one thing", m[1])
		}
	}
}

func TestPicturesLeaveOtherFormsAlone(t *testing.T) {
	bare := quince()
	bare.Lethality.Logs[0].Aim, bare.Lethality.Logs[0].Probes[0].Trace, bare.Protein.Picture = nil, nil, nil
	for i, d := range []Doc{Assessment(quince(), Metric), Assessment(bare, Metric)} {
		if s := text(t, Style{}, d); strings.Contains(s, "Picture of") || strings.Contains(s, "unfolded") {
			t.Errorf("%d: the text tells of a picture:\n%s", i, s)
		}
	}
	if a, b := sheet(t, Assessment(quince(), Metric)), sheet(t, Assessment(bare, Metric)); a != b {
		t.Error(cmp.Diff(b, a))
	}
	if a, b := jsonText(t, quince()), jsonText(t, bare); a != b {
		t.Error(cmp.Diff(b, a))
	}
}

func TestWhatCannotBeDrawnSaysWhy(t *testing.T) {
	a := quince()
	a.Protein.Picture.Heat = beverage.HeatPicture{Why: "published rate constants are for milk near pH 6.7"}
	if s := page1(t, Assessment(a, Metric)); !strings.Contains(s, "<p>Not drawn: published rate constants are for milk near pH 6.7.</p>") {
		t.Error("the page does not say why lethality is not held against protein")
	}
}

func TestPictureOfARecordTellsItAll(t *testing.T) {
	p := pictures(Assessment(quince(), Metric))["Picture of logs/run-1.csv"][0]
	var got []string
	for _, e := range p.Legend() {
		got = append(got, e.Letter+" "+e.Text)
	}
	want := []string{" 1: Can 1, decides", " no sound reading: nothing is credited", " target 12.00 min: the target that was stated", "a gap, row 212", "W the record at its word: 12.00 min; credited: 11.99 min"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if got := p.Data.Rows[2]; !cmp.Equal(got, []string{"20.0", "89.7 to 90.0", "6.00"}) {
		t.Errorf("third row is %v", got)
	}
	if at := p.Chart.Panels[1].Lanes[0].Marks[0].X; math.Abs(at-(35*60+10)/60.0) > 1e-9 {
		t.Errorf("the gap of 08:35:10 stands at %v min", at)
	}
}

func TestNoCurveStandsAboveWhatIsCredited(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		credit := rapid.Float64Range(0, 50).Draw(t, "credited")
		l := beverage.LogResult{File: "run.csv", Aim: &beverage.Aim{TrefC: 121.1, ZC: 10}, Probes: []beverage.ProbeResult{{Name: "Can 1", Role: "product", CreditedMinutes: &credit, Trace: &beverage.Trace{SlotS: 1}}}}
		tr := l.Probes[0].Trace
		for i, c := range rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 30).Draw(t, "built") {
			at := float64(i)
			tr.Slots = append(tr.Slots, beverage.TraceSlot{LowS: at, HighS: at + 0.5, EndS: at + 0.5, CreditedMin: c})
			tr.Holes = append(tr.Holes, beverage.TraceHole{FromS: at + 0.6, ToS: at + 0.9})
		}
		p, _ := RecordPicture(l, Metric)
		for _, q := range p.Chart.Panels[2].Curves[0].Points {
			if !(q.Y <= credit) {
				t.Fatalf("%v is drawn where %v is credited", q.Y, credit)
			}
		}
	})
}

func TestNoLineCrossesAStretchWithoutReadings(t *testing.T) {
	v := recordView{axisS: 60}
	for _, c := range []struct {
		holes []beverage.TraceHole
		want  []int // points that are breaks
	}{
		{nil, nil},
		{[]beverage.TraceHole{{FromS: 2110, ToS: 2150}}, []int{7}}, // within a slot: between its coldest and its hottest
		{[]beverage.TraceHole{{FromS: 590, ToS: 600}, {FromS: 1790, ToS: 1800}}, []int{2, 7}},
	} {
		tr := traceOne()
		tr.Holes = c.holes
		var got []int
		for i, q := range v.readings(tr, temperature.in(Metric)) {
			if math.IsNaN(q.X) {
				got = append(got, i)
			}
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%v: %s", c.holes, d)
		}
	}
}

func TestMomentsOfRecords(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     float64
		ok       bool
	}{
		{"2026-03-02T08:00:00", "2026-03-02T08:35:10", 2110, true},
		{"2026-03-02T08:00:00", "2026-03-03T08:00:00.250", 86400.25, true},
		{"23:59:00", "00:01:00 (day 2)", 120, true},
		{"0 s", "12.5 s", 12.5, true},
		{"0 s", "", 0, false},
		{"", "0 s", 0, false},
		{"0 s", "NaN s", 0, false},
		{"2026-03-02T08:00:00", "08:35:10", 0, false},
		{"23:59:00", "00:01:00 (day x)", 0, false},
		{"2026-03-02T08:00:00", "soon", 0, false},
	} {
		got, ok := secondsBetween(c.from, c.to)
		if ok != c.ok || ok && math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q to %q: got %v, %v", c.from, c.to, got, ok)
		}
	}
}

func TestLettersAreSharedWhereTheyWouldRunTogether(t *testing.T) {
	l := &lettering{apartS: 60, letter: map[string]string{}}
	got := l.marks([]faultMark{{0, "gap, row 2"}, {30, "spike, row 5"}, {300, "gap, row 40"}}, 60)
	want := []chart.Mark{{Letter: "a", Name: "gap, row 2; spike, row 5"}, {Letter: "b", Name: "gap, row 40", X: 5}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if again := l.marks([]faultMark{{300, "gap, row 40"}}, 60); again[0].Letter != "b" {
		t.Errorf("the same fault of another probe is %s", again[0].Letter)
	}
	many := &lettering{letter: map[string]string{}}
	var faults []faultMark
	for i := range 30 {
		faults = append(faults, faultMark{float64(i), strings.Repeat("x", i+1)})
	}
	if n := len(many.marks(faults, 1)); n != mostLetters || many.left != 4 {
		t.Errorf("%d letters, %d faults without", n, many.left)
	}
}

func TestManyRecordsAreNotAllDrawn(t *testing.T) {
	r := someLogs()
	for range mostPictures {
		r.Logs = append(r.Logs, r.Logs[0])
	}
	d := Lethality(r, Metric)
	n := 0
	for _, ps := range pictures(d) {
		n += len(ps)
	}
	if s := html.UnescapeString(page1(t, d)); n != mostPictures || !strings.Contains(s, "The records of 2 further files are not drawn; posset lethality draws one by itself.") {
		t.Errorf("%d are drawn, and how many are not is not said", n)
	}
}

func TestMoreProbesThanStylesAreNamed(t *testing.T) {
	l := someLogs().Logs[0]
	for range chart.Styles {
		l.Probes = append(l.Probes, l.Probes[1])
	}
	p, _ := RecordPicture(l, Metric)
	if n := len(p.Chart.Panels[0].Curves); n != chart.Styles || !strings.Contains(p.Chart.About, "2 further probes are not drawn") {
		t.Errorf("%d curves; %s", n, p.Chart.About)
	}
	if first := p.Chart.Panels[0].Curves[0].Name; first != "1: Can 2 (assumed), decides" {
		t.Errorf("the least credit is drawn as %s", first)
	}
}

func TestNoProbeIsSaidToDecideOnAStay(t *testing.T) {
	l := someLogs().Logs[0]
	l.Aim = &beverage.Aim{TrefC: 121.1, ZC: 10, StayC: known(72), StayS: known(15)}
	p, _ := RecordPicture(l, Metric)
	if top := p.Chart.Panels[0]; top.Curves[0].Name != "1: Can 2 (assumed)" || top.Levels[0].Label != "72.0 °C for 15 s" {
		t.Errorf("%s; %v", top.Curves[0].Name, top.Levels)
	}
}

func TestPackPictureIsNotPressedFlat(t *testing.T) {
	ps := []beverage.PressureAt{{At: "storage", TempC: 20, GaugeKPa: known(300), GaugeKPaHigh: known(310)}, {At: "process", TempC: 121, GaugeKPaHigh: known(4000)}, {At: "process", TempC: 122, LiquidFull: true}, {At: "table", TempC: 130, LiquidFull: true}}
	p := packPicture(ps, known(620), Metric)
	y, spans := p.Chart.Panels[0].Y, p.Chart.Panels[0].Spans
	if math.Abs(y.High-1.6*6.2) > 1e-9 || len(spans) != 1 || spans[0].From != 122 || spans[0].To != 130 {
		t.Errorf("axis to %v, spans %v", y.High, spans)
	}
	if p := packPicture(ps, nil, Metric); !strings.HasSuffix(p.Chart.About, "No rating is given.") {
		t.Errorf("says %q", p.Chart.About)
	}
}

func TestHostileWordsInPictures(t *testing.T) {
	a := quince()
	a.Lethality.Logs[0].Probes[0].Name = `</svg><script>alert(1)</script>" onload="x` + "\x1b[31m"
	a.Lethality.Logs[0].Probes[0].Faults[0].Kind = `<img src=x>`
	a.Protein.Picture.Heat.Of = "</desc><style>*{}</style>"
	s := page1(t, Assessment(a, Metric))
	for _, never := range []string{"<script", "<img", "<style>*", "\x1b", `" onload="`} {
		if strings.Contains(s, never) {
			t.Errorf("holds %q", never)
		}
	}
}

func TestFindingsOfOneTitleStandTogether(t *testing.T) {
	f := func(id, detail string) beverage.Finding {
		return beverage.Finding{ID: id, Level: beverage.Review, Title: "About " + id, Detail: detail, Source: "source of " + detail, Basis: beverage.Seen}
	}
	got := findingItems([]beverage.Finding{f("caffeine-high", "one"), f("log-fault", "two"), f("caffeine-high", "three")}, beverage.Review)
	want := Items{{Mark: "review", ID: "caffeine-high", Title: "About caffeine-high", Parts: []Part{{"one", "source of one"}, {"three", "source of three"}}},
		{Mark: "review", ID: "log-fault", Title: "About log-fault", Text: "two", Foot: "source of two"}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	d := Doc{Sections: []Section{{Title: "Reviews", Blocks: []Block{got}}}}
	if s := text(t, Style{}, d); !strings.Contains(s, "          - one\n            source of one\n          - three\n") {
		t.Errorf("as text:\n%s", s)
	}
	if s := page1(t, d); !strings.Contains(s, `<li>three <span class="foot">source of three</span></li>`) {
		t.Error("the page lacks the second part")
	}
}
