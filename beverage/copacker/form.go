package copacker

import (
	"slices"

	"posset/beverage"
	"posset/beverage/law"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// How much of what one file may hold.
const (
	mostLines     = 500
	mostProcesses = 20
	mostPacks     = 50
)

// Ranges. They are wide: what is outside is a slip of the pen.
var (
	heatSpan      = spec.Span{Low: -30, High: 250, Unit: "°C"}
	holdSpan      = spec.Span{Low: 0, High: 30 * 86400, Unit: "s"}
	flowSpan      = spec.Span{Low: 0, High: 1e9, Unit: "L/h"}
	backSpan      = spec.Span{Low: 0, High: 10_000, Unit: "kPa"}
	pressureSpan  = spec.Span{Low: 0, High: 2000, Unit: "MPa"}
	poreSpan      = spec.Span{Low: 0, High: 1000, Unit: "µm"}
	fillSpan      = spec.Span{Low: 0, High: 1_000_000, Unit: "mL"}
	runSpan       = spec.Span{Low: 0, High: 1e9, Unit: "mL"}
	viscositySpan = spec.Span{Low: 0, High: 1_000_000, Unit: "mPa·s"}
)

const mostVolumes = 20 // of CO2

// none is how a line says that there is nothing of a kind.
const none = "none"

// allergenWords are what a line may say it handles: the allergens that the food
// laws of the markets name, in the words of the ingredient library.
var allergenWords = []string{none, "milk", "egg", "soy", "gluten", "tree nuts", "peanuts", "sesame", "sulfites", "fish", "crustaceans", "molluscs", "celery", "mustard", "lupin"}

// particleWords are in the order of coarseness.
var particleWords = []string{none, "pulp", "pieces"}

// places are the markets in which something is sold: Codex is a standard.
var places = slices.DeleteFunc(slices.Clone(beverage.Markets), func(m beverage.Market) bool { return m == beverage.Codex })

// classWords are the acid classes a process can be set up for.
var classWords = []string{beverage.Acid.String(), beverage.Acidified.String(), beverage.LowAcid.String()}

// registrationWords are a market and what the plant did there: "US acidified".
func registrationWords() []string {
	var words []string
	for _, m := range beverage.Markets {
		for _, kind := range registered {
			if asks(m, kind) {
				words = append(words, registration(m, kind))
			}
		}
	}
	return words
}

// registered are the kinds of duty that a line may say its plant has done; what
// milk asks for stands under dairy_licence.
var registered = []law.FiledAs{law.FiledAny, law.FiledAcidified, law.FiledLowAcidRetort, law.FiledLowAcidAseptic, law.FiledJuice}

func registration(m beverage.Market, kind law.FiledAs) string {
	if kind == law.FiledAny {
		return string(m) + " food"
	}
	return string(m) + " " + string(kind)
}

// asks tells whether a market wants a plant registered, licensed or planned for
// this very kind; papers that only a product's own file holds are not asked of a
// line.
func asks(m beverage.Market, kind law.FiledAs) bool {
	for _, d := range duties(m, kind) {
		if d.Filed || kind == law.FiledAny || kind == law.FiledJuice {
			return true
		}
	}
	return false
}

func duties(m beverage.Market, kind law.FiledAs) (list []law.Filing) {
	for _, f := range law.Filings(m, kind) {
		if f.For == kind {
			list = append(list, f)
		}
	}
	return list
}

type lineFile struct{ lines []Line }

var fileTable = spec.TableOf(
	spec.Several("line", mostLines, "One filling line of a co-packer. What it does not say counts as missing.", lineTable, addLine),
)

var lineTable = spec.TableOf(
	spec.Required(spec.Text("name", "What the line is called.", "Line 2, bottles", func(l *Line) *beverage.Given[string] { return &l.Name })),
	spec.Required(spec.Text("plant", "Whose it is, and where.", "Fernhollow Beverages, plant A", func(l *Line) *beverage.Given[string] { return &l.Plant })),
	spec.Words("markets", places, "Markets that the plant packs for.", `["US", "CA"]`, func(l *Line) *beverage.Given[[]beverage.Market] { return &l.Markets }),
	spec.Words("distribution", []beverage.Distribution{beverage.Ambient, beverage.Refrigerated, beverage.Frozen}, "How the plant stores and ships.", `["ambient", "refrigerated"]`,
		func(l *Line) *beverage.Given[[]beverage.Distribution] { return &l.Distribution }),
	spec.Words("registrations", registrationWords(), "What the plant is registered for, by market.", `["US food", "US acidified"]`, func(l *Line) *beverage.Given[[]string] { return &l.Registrations }),
	spec.Flag("dairy_licence", "Whether the plant may make drinks with milk or milk protein.", "true", func(l *Line) *beverage.Given[bool] { return &l.DairyLicence }),
	spec.Flag("alcohol_licence", "Whether the plant may make drinks with alcohol.", "false", func(l *Line) *beverage.Given[bool] { return &l.AlcoholLicence }),
	spec.Words("allergens", allergenWords, "Allergens that the line handles; none where it handles none.", `["milk", "soy"]`, func(l *Line) *beverage.Given[[]string] { return &l.Allergens }),
	spec.Measure("minimum_run", quantity.Volume, runSpan, "Least that the plant makes at once.", "20000 L", func(l *Line) *beverage.Given[float64] { return &l.MinimumRunML }),
	spec.Sub("carbonation", "Volumes of CO2 that the line puts in and keeps in at the filler. Leave it out for still drinks only.", volumesTable, func(l *Line) *Range { return &l.Carbonation }),
	spec.Words("headspace_gas", []beverage.Gas{beverage.Air, beverage.Nitrogen, beverage.CO2, beverage.Vacuum}, "What the line can put into the headspace.", `["air", "nitrogen"]`,
		func(l *Line) *beverage.Given[[]beverage.Gas] { return &l.HeadspaceGas }),
	spec.Flag("nitrogen_dosing", "Whether liquid nitrogen can be dosed before closing.", "true", func(l *Line) *beverage.Given[bool] { return &l.NitrogenDosing }),
	spec.Flag("aseptic_filler", "Whether the filler and the packs are sterilized and kept sterile.", "true", func(l *Line) *beverage.Given[bool] { return &l.AsepticFiller }),
	spec.Word("particles", particleWords, "The coarsest that the line can run.", func(l *Line) *beverage.Given[string] { return &l.Particles }),
	spec.Measure("viscosity_at_most", quantity.Viscosity, viscositySpan, "The thickest that the line can run.", "200 mPa·s", func(l *Line) *beverage.Given[float64] { return &l.ViscosityMPaS }),
	spec.Several("process", mostProcesses, "One way in which the line makes a drink keep.", processTable, addProcess),
	spec.Several("pack", mostPacks, "One kind of pack.", packTable, addPack),
)

var processTable = spec.TableOf(
	spec.Required(spec.Word("route", beverage.Routes, "The way itself, as process.route of a spec.", func(p *Process) *beverage.Given[beverage.Route] { return &p.Route })),
	spec.Words("classes", classWords, "Acid classes that the process is set up for.", `["acid", "acidified"]`, func(p *Process) *beverage.Given[[]string] { return &p.Classes }),
	between("hold_temperature", quantity.Temperature, heatSpan, "Of the drink in the tube; of the medium in a tunnel or a retort.", "60 C", func(p *Process) *Range { return &p.HoldC }),
	between("hold_time", quantity.Duration, holdSpan, "In the tube, the tunnel's hot zone, the retort, or under pressure.", "30 s", func(p *Process) *Range { return &p.HoldS }),
	between("fill_temperature", quantity.Temperature, heatSpan, "Of the drink at the filler.", "85 C", func(p *Process) *Range { return &p.FillC }),
	between("pack_hold_time", quantity.Duration, holdSpan, "Hot fill: closed, before cooling.", "2 min", func(p *Process) *Range { return &p.PackHoldS }),
	between("flow", quantity.Flow, flowSpan, "Through the holding tube.", "5000 L/h", func(p *Process) *Range { return &p.FlowLPerH }),
	spec.Sub("back_pressure", "Gauge pressure on the packs in a retort, or on the drink at the end of a tube.", backTable, func(p *Process) *Range { return &p.BackKPa }),
	between("pressure", quantity.Pressure, pressureSpan, "High pressure only.", "600 MPa", func(p *Process) *Range { return &p.PressureMPa }),
	spec.Measure("filter_pore", quantity.Length, poreSpan, "Sterile filtration: the finest filter.", "0.2 µm", func(p *Process) *beverage.Given[float64] { return &p.FilterPoreUM }),
)

var packTable = spec.TableOf(
	spec.Required(spec.Word("type", beverage.PackTypes, "What the pack is.", func(p *Pack) *beverage.Given[beverage.PackType] { return &p.Type })),
	spec.Sub("fill", "Volumes that are filled into it.", spec.TableOf(ends(quantity.Volume, fillSpan, "250 mL")...), func(p *Pack) *Range { return &p.FillML }),
)

var (
	volumesTable = spec.TableOf(
		spec.Number("at_least", 0, mostVolumes, "Lower end.", "0", func(r *Range) *beverage.Given[float64] { return &r.AtLeast }),
		spec.Number("at_most", 0, mostVolumes, "Upper end.", "3.5", func(r *Range) *beverage.Given[float64] { return &r.AtMost }),
	)
	backTable = spec.TableOf(
		spec.GaugePressure("at_least", backSpan, "Lower end.", "0 barg", func(r *Range) *beverage.Given[float64] { return &r.AtLeast }),
		spec.GaugePressure("at_most", backSpan, "Upper end.", "2.5 barg", func(r *Range) *beverage.Given[float64] { return &r.AtMost }),
	)
)

// between declares a key that holds from where to where a process can be set.
func between(key string, dim quantity.Dimension, within spec.Span, means, example string, at func(*Process) *Range) spec.Field[Process] {
	return spec.Sub(key, means, spec.TableOf(ends(dim, within, example)...), at)
}

func ends(dim quantity.Dimension, within spec.Span, example string) []spec.Field[Range] {
	return []spec.Field[Range]{
		spec.Measure("at_least", dim, within, "Lower end.", example, func(r *Range) *beverage.Given[float64] { return &r.AtLeast }),
		spec.Measure("at_most", dim, within, "Upper end.", example, func(r *Range) *beverage.Given[float64] { return &r.AtMost }),
	}
}

// Keys returns every table and key of a file of lines, in the order in which a
// reference tells them.
func Keys() []spec.KeyDoc { return spec.TableDocs(fileTable) }

// Allergens are the words that a line and a request may say, none among them.
func Allergens() []string { return slices.Clone(allergenWords) }
