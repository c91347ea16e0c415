package logfile

import (
	"regexp"
	"strings"
	"unicode"
)

// heading is a column heading taken apart.
type heading struct {
	full  string // as written, blanks trimmed
	label string // without its unit
	unit  string // "C", "F", "K", another unit in lower case, or ""
}

var (
	bracketed  = regexp.MustCompile(`^(.*?)[\s,]*[(\[{<]([^()\[\]{}<>]*)[)\]}>]\s*$`)
	slashed    = regexp.MustCompile(`^(.*\S)\s*/\s*([^/\s]{1,8})$`)
	degreeUnit = regexp.MustCompile(`(?i)(?:[°º˚�]\s*|\bdeg(?:rees?)?[.\s_]*|_deg)([CFK])\b`)
	unitWord   = regexp.MustCompile(`(?i)(?:^|[^\pL])(celsius|centigrade|fahrenheit|kelvin)(?:$|[^\pL])`)
	unitSuffix = regexp.MustCompile(`(?i)^(.*(?:\d|temp|temperature|temperatur))[_ ]([CFK])$`)
	timeSuffix = regexp.MustCompile(`(?i)^(.*(?:time|elapsed|zeit|dauer|t))[_ ](s|sec|secs|seconds|min|mins|minutes|h|hours|ms)$`)
	inUnit     = regexp.MustCompile(`(?i)^(.*\S)\s+in\s+(\S{1,12})$`)
)

// parseHeading takes the unit off a heading.
func parseHeading(text string) heading {
	full := strings.Join(strings.Fields(strings.TrimPrefix(text, "\ufeff")), " ")
	h := heading{full: full, label: full}
	if m := bracketed.FindStringSubmatch(full); m != nil {
		if u := unitToken(m[2]); u != "" {
			return heading{full, strings.TrimSpace(m[1]), u}
		}
	}
	if m := degreeUnit.FindStringSubmatchIndex(full); m != nil {
		h.unit = strings.ToUpper(full[m[2]:m[3]])
		h.label = trimLabel(full[:m[0]] + full[m[1]:])
		return h
	}
	if m := unitWord.FindStringSubmatchIndex(full); m != nil {
		h.unit = strings.ToUpper(full[m[2] : m[2]+1])
		h.label = trimLabel(full[:m[2]] + full[m[3]:])
		return h
	}
	for _, form := range []*regexp.Regexp{slashed, inUnit, unitSuffix, timeSuffix} {
		if m := form.FindStringSubmatch(full); m != nil {
			if u := unitToken(m[2]); u != "" {
				return heading{full, strings.TrimSpace(m[1]), u}
			}
		}
	}
	return h
}

// trimLabel drops what a cut-out unit leaves behind.
func trimLabel(s string) string {
	for _, empty := range []string{"()", "[]", "{}", "<>"} {
		s = strings.ReplaceAll(s, empty, "")
	}
	return strings.Trim(strings.Join(strings.Fields(s), " "), " ,;/_-[](){}")
}

// unitToken gives the unit a token names: "C", "F", "K", another known unit in
// lower case, or "" when it names none.
func unitToken(text string) string {
	t := strings.ToLower(strings.TrimSpace(text))
	t = strings.Trim(t, "()[]{}<>")
	switch strings.TrimLeft(strings.TrimPrefix(strings.TrimPrefix(t, "degrees"), "deg"), " .°º˚�_") {
	case "c", "celsius", "centigrade":
		return "C"
	case "f", "fahrenheit":
		return "F"
	case "k", "kelvin":
		return "K"
	}
	if t = strings.ReplaceAll(t, " ", ""); otherUnits[t] {
		return t
	}
	return ""
}

// otherUnits are units that are not temperatures, times among them.
var otherUnits = setOf(`s sec secs second seconds sek min mins minute minutes minuten h hr hrs hour hours std ms msec
	hh:mm:ss h:mm:ss hh:mm h:mm mm:ss m:ss hh:mm:ss.000 yyyy-mm-dd dd.mm.yyyy dd/mm/yyyy mm/dd/yyyy
	bar barg bara mbar bar(g) bar(a) psi psig psia kpa mpa pa hpa atm inhg mmhg rpm u/min 1/min min-1 hz khz
	% %rh rh pct l/h l/min l/s m3/h m³/h m³/s gpm kg/h kg/s kg g mg mm cm m inch in ft v mv volt a ma amp w kw kwh n nm
	ph µs/cm us/cm ms/cm ntu brix °brix pu f0 ppm mg/l g/l cp mpas mpa·s m/s km/h`)

// timeUnitS is the length in seconds of a unit of time.
var timeUnitS = map[string]float64{
	"s": 1, "sec": 1, "secs": 1, "second": 1, "seconds": 1, "sek": 1,
	"min": 60, "mins": 60, "minute": 60, "minutes": 60, "minuten": 60,
	"h": 3600, "hr": 3600, "hrs": 3600, "hour": 3600, "hours": 3600, "std": 3600,
	"ms": 1e-3, "msec": 1e-3,
}

func setOf(words string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(words) {
		set[w] = true
	}
	return set
}

func isTemperatureUnit(u string) bool { return u == "C" || u == "F" || u == "K" }

// words splits a heading into lower-case words of letters, and numbers.
func words(text string) []string {
	var out []string
	start, kind := -1, 0
	flush := func(end int) {
		if start >= 0 {
			out = append(out, strings.ToLower(text[start:end]))
		}
		start = -1
	}
	for i, r := range text {
		k := 0
		switch {
		case unicode.IsLetter(r):
			k = 1
		case unicode.IsDigit(r):
			k = 2
		}
		if k != kind {
			flush(i)
		}
		if k != 0 && start < 0 {
			start = i
		}
		kind = k
	}
	flush(len(text))
	return out
}

// key is how headings are compared: case and spacing aside.
func key(text string) string {
	return strings.ToLower(strings.Join(strings.Fields(text), ""))
}
