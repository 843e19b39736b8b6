//go:build !unix

package setup

import "os/exec"

// OwnGroup does nothing here: this system has no process groups that Go's
// standard library could end, so only the command itself is stopped.
func OwnGroup(*exec.Cmd) {}
