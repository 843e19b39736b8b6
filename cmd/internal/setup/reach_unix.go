//go:build unix

package setup

import "syscall"

// Reach is true when something accepts a connection at the Unix socket. It
// calls the system itself: package net would bring cgo into the two commands.
func Reach(socket string) bool {
	fd, err := syscall.Socket(syscall.AF_UNIX, syscall.SOCK_STREAM, 0)
	if err != nil {
		return false
	}
	defer syscall.Close(fd)
	return syscall.Connect(fd, &syscall.SockaddrUnix{Name: socket}) == nil
}
