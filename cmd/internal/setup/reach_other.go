//go:build !unix

package setup

// Reach is true: a system without Unix sockets has no display to look for.
func Reach(string) bool { return true }
