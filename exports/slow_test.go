package exports

import "testing"

// slow leaves a test out of a short run: the race detector would take many
// minutes over it and finds nothing, for the handouts are made in one goroutine.
// The step test of cmd/verify runs every one of them.
func slow(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("runs in the step test, not under the race detector")
	}
}
