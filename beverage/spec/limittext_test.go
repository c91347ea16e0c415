package spec

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestALimitOnOneLine(t *testing.T) {
	l, err := ParseLimit("retort temperature >= 121.1 C")
	require.NoError(t, err)
	assert.Equal(t, "retort temperature", string(l.What))
	assert.Equal(t, 121.1, l.AtLeast.V)
	assert.False(t, l.AtMost.Known)
	assert.Equal(t, "at least 121.1 C", l.Text)
	l, err = ParseLimit("come-up time≤8 min")
	require.NoError(t, err)
	assert.Equal(t, 480.0, l.AtMost.V)
	assert.Equal(t, "at most 8 min", l.Text)
	for text, want := range map[string]string{
		"":                              `"" is not a limit; write "retort temperature >= 121.1 C" or "come-up time <= 8 min"`,
		"retort temperature > 121 C":    `"retort temperature > 121 C" is not a limit; write "retort temperature >= 121.1 C" or "come-up time <= 8 min"`,
		"belt speed >= 3 m":             `"belt speed >= 3 m" is about "belt speed", which no line like this takes; write "retort temperature >= 121.1 C" or "come-up time <= 8 min"`,
		"retort temperature >= 3 min":   `"3 min" is a time; write a temperature such as "93 C"`,
		"retort temperature >= 12100 C": `"retort temperature >= 12100 C" is out of range; write retort temperature from -30 to 250 °C`,
	} {
		_, err := ParseLimit(text)
		assert.EqualError(t, err, want)
	}
}
