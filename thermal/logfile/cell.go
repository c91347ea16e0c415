package logfile

import (
	"bytes"
	"math"
	"strconv"
)

// A cell without a number is a NaN whose payload says why: missing, or the
// index of an error text.
const (
	nanBits     = 0x7ff8_0000_0000_0000
	missingBits = nanBits + 1
	firstText   = 2
)

var missing = math.Float64frombits(missingBits)

// textCell is the value of a cell that holds an error text.
func textCell(index int) float64 { return math.Float64frombits(nanBits + firstText + uint64(index)) }

// textIndex gives the index of a cell's error text, or false.
func textIndex(v float64) (int, bool) {
	bits := math.Float64bits(v)
	if v == v || bits < nanBits+firstText || bits > nanBits+firstText+maxTexts {
		return 0, false
	}
	return int(bits - nanBits - firstText), true
}

// maxTexts bounds how many different error texts are remembered.
const maxTexts = 16

var pow10 = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18}

// maxMantissaDigits is what fits an int64 without overflow.
const maxMantissaDigits = 18

// parseNumber reads a decimal number whose mark is point or comma. decimals is
// how many digits stand behind the mark.
func parseNumber(b []byte, mark byte) (v float64, decimals int, ok bool) {
	i, neg := 0, false
	if len(b) > 0 && (b[0] == '-' || b[0] == '+') {
		neg, i = b[0] == '-', 1
	}
	var mantissa int64
	digits, point := 0, -1
	for ; i < len(b); i++ {
		switch c := b[i]; {
		case isDigit(c):
			mantissa = mantissa*10 + int64(c-'0')
			digits++
		case c == mark && point < 0:
			point = digits
		default:
			return parseExponent(b, mark, digits)
		}
		if digits > maxMantissaDigits {
			return parseExponent(b, mark, digits)
		}
	}
	if digits == 0 {
		return 0, 0, false
	}
	if point >= 0 {
		decimals = digits - point
	}
	v = float64(mantissa) / pow10[decimals]
	if neg {
		v = -v
	}
	return v, decimals, true
}

// maxNumberLen bounds a written number.
const maxNumberLen = 40

// parseExponent reads "1.215e2" and numbers with very many digits. Such
// numbers count as having all their digits behind the mark.
func parseExponent(b []byte, mark byte, digits int) (float64, int, bool) {
	if digits == 0 || len(b) > maxNumberLen || digits <= maxMantissaDigits && !bytes.ContainsAny(b, "eE") || bytes.ContainsAny(b, "xX_pPiInN") {
		return 0, 0, false
	}
	if mark == ',' {
		if bytes.IndexByte(b, '.') >= 0 {
			return 0, 0, false
		}
		b = bytes.Replace(b, []byte(","), []byte("."), 1)
	}
	v, err := strconv.ParseFloat(string(b), 64)
	if err != nil {
		return 0, 0, false
	}
	return v, maxMantissaDigits, true
}

// missingWords stand in cells where a recorder had nothing to write.
var missingWords = []string{"-", "--", "---", "----", "-----", ".", "nan", "n/a", "na", "null", "none", "nil", "#n/a", "?"}

// isMissing tells an empty cell from an error text.
func isMissing(b []byte) bool {
	if len(b) == 0 {
		return true
	}
	for _, w := range missingWords {
		if len(w) == len(b) && bytes.EqualFold(b, []byte(w)) {
			return true
		}
	}
	return false
}
