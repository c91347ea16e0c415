package report

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Room is set aside for a long list, and never without end: the first may be by
// far the longest.
func TestRoomForMore(t *testing.T) {
	assert.Equal(t, 17*9, RoomForMore(16, 9))
	assert.Equal(t, 0, RoomForMore(16, 0))
	assert.Equal(t, mostRoom, RoomForMore(mostRoom, 100000))
}
