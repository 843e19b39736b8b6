//go:build unix

package setup

import (
	"os/exec"
	"syscall"
)

// OwnGroup makes the command the head of a process group of its own, and makes
// the end of its context end the whole group: `go test` alone would leave the
// test program behind.
func OwnGroup(cmd *exec.Cmd) {
	if cmd.SysProcAttr == nil {
		cmd.SysProcAttr = &syscall.SysProcAttr{}
	}
	cmd.SysProcAttr.Setpgid = true
	cmd.Cancel = func() error {
		return syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
	}
}
