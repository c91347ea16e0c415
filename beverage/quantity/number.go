package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Bounds of a number anybody would write down for a drink: outside them it is
// a slip, and inside them no conversion overflows.
const (
	largest     = 1e12
	smallest    = 1e-12
	longestText = 200 // bytes
)

// scanNumber returns how many bytes of s are a plain decimal number with an
// optional sign and exponent; 0 where there is none.
func scanNumber(s string) int {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	whole := digits(s[i:])
	i += whole
	part := 0
	if i < len(s) && s[i] == '.' {
		if part = digits(s[i+1:]); part > 0 {
			i += 1 + part
		}
	}
	if whole+part == 0 {
		return 0
	}
	return i + exponent(s[i:])
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// exponent returns the length of an exponent that s starts with.
func exponent(s string) int {
	if len(s) < 2 || (s[0] != 'e' && s[0] != 'E') {
		return 0
	}
	i := 1
	if s[i] == '+' || s[i] == '-' {
		i++
	}
	n := digits(s[i:])
	if n == 0 {
		return 0
	}
	return i + n
}

// number reads what scanNumber found. A number so small that it would read as
// zero is refused: a dose of nothing is not what was written.
func number(s string) (v float64, is, write string) {
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case err != nil, math.Abs(v) >= largest:
		return 0, "is too large a number", "write one below 1e12"
	case math.Abs(v) < smallest && nonZero(s):
		return 0, "is too small a number", "write 0, or one above 1e-12"
	}
	return v, "", ""
}

func nonZero(s string) bool {
	mantissa, _, _ := strings.Cut(strings.ToLower(s), "e")
	return strings.ContainsAny(mantissa, "123456789")
}

// withoutComma offers what a number with commas may have meant; rest is what
// follows the number. Both readings are offered where both are likely.
func withoutComma(text string) (offers []string) {
	end := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsDigit(r) && !strings.ContainsRune("+-.,", r) })
	if end < 0 {
		end = len(text)
	}
	figure, rest := strings.TrimRight(text[:end], ".,"), text[end:]
	for _, n := range commaReadings(figure) {
		if scanNumber(n) == len(n) && len(n) > 0 {
			offers = append(offers, n+rest)
		}
	}
	return offers
}

func commaReadings(figure string) []string {
	comma, dot := strings.LastIndexByte(figure, ','), strings.LastIndexByte(figure, '.')
	grouped := strings.ReplaceAll(figure, ",", "")
	switch {
	case comma < 0:
		return []string{figure}
	case dot > comma:
		return []string{grouped}
	case dot >= 0: // 1.000,5
		return []string{strings.Replace(strings.ReplaceAll(figure, ".", ""), ",", ".", 1)}
	case strings.Count(figure, ",") > 1:
		return []string{grouped}
	case len(figure)-comma-1 == 3:
		return []string{grouped, strings.Replace(figure, ",", ".", 1)}
	}
	return []string{strings.Replace(figure, ",", ".", 1)}
}
