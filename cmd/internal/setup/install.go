package setup

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// ErrMissing is wrapped by Install's error when a package that is needed
// cannot be had.
var ErrMissing = errors.New("system packages are missing")

// Installer brings a machine's packages up to what some needs ask for.
type Installer struct {
	Machine Machine
	Runner  Runner
	// Out takes what the installer has to say and what apt-get prints.
	Out io.Writer
	// Asking is true when a person can type a password for sudo.
	Asking bool
}

// Install says what the needs ask for and installs what is missing. On a
// system whose packages it does not install itself it prints what to install
// and returns nil: whether anything is missing there, the compiler will tell.
func (in Installer) Install(ctx context.Context, needs ...Need) error {
	if in.Machine.Family != Debian {
		fmt.Fprintf(in.Out, "This program installs nothing by itself on %s. If something below says that a tool or header is missing:\n%s",
			in.Machine.Name, Advice(in.Machine, needs...))
		return nil
	}
	names := PackagesFor(Debian, needs...)
	missing, err := in.missing(ctx, names)
	if err != nil {
		return in.failure(names, err)
	}
	for _, need := range needs {
		fmt.Fprintf(in.Out, "Needed %s: %s\n", need.Purpose(), strings.Join(PackagesFor(Debian, need), ", "))
	}
	if len(missing) == 0 {
		fmt.Fprintln(in.Out, "All of these system packages are installed.")
		return nil
	}
	fmt.Fprintf(in.Out, "Will install, with what they depend on: %s\n", strings.Join(missing, ", "))
	if err := in.apt(ctx, missing); err != nil {
		return in.failure(missing, err)
	}
	if missing, err = in.missing(ctx, names); err != nil {
		return in.failure(names, err)
	}
	if len(missing) > 0 {
		return in.failure(missing, errors.New("apt-get reported no error, yet they are not installed"))
	}
	return nil
}

// missing asks dpkg-query which packages are not installed.
func (in Installer) missing(ctx context.Context, names []string) ([]string, error) {
	if _, err := in.Runner.Find("dpkg-query"); err != nil {
		return nil, fmt.Errorf("look for installed packages: %w", err)
	}
	// dpkg-query fails when one of the packages is unknown to it, and still
	// lists the others: what it printed counts, not how it ended.
	out, err := Output(ctx, in.Runner, Command{
		Name:   "dpkg-query",
		Args:   append([]string{"-W", "-f", `${Package}\t${db:Status-Status}\n`}, names...),
		Stderr: io.Discard,
	})
	if ctx.Err() != nil {
		return nil, err
	}
	return Missing(names, out), nil
}

// Missing lists those of the wanted packages that dpkg-query's listing, with a
// name, a tab and a status on each line, does not show as installed.
func Missing(wanted []string, listing string) []string {
	installed := make(map[string]bool)
	for line := range strings.Lines(listing) {
		name, status, ok := strings.Cut(strings.TrimSpace(line), "\t")
		if ok && status == "installed" {
			installed[name] = true
		}
	}
	var missing []string
	for _, name := range wanted {
		if !installed[name] {
			missing = append(missing, name)
		}
	}
	return missing
}

// apt refreshes the package lists and installs the packages.
func (in Installer) apt(ctx context.Context, names []string) error {
	prefix, err := in.rights()
	if err != nil {
		return err
	}
	if _, err := in.Runner.Find("apt-get"); err != nil {
		return err
	}
	update := in.command(prefix, "update")
	fmt.Fprintf(in.Out, "$ %s\n", update)
	updated := in.Runner.Run(ctx, update)
	if updated != nil {
		if ctx.Err() != nil {
			return updated
		}
		// One broken list among several must not stop what the others hold.
		fmt.Fprintf(in.Out, "The package lists could not all be refreshed (%v); trying with the ones there are.\n", updated)
	}
	install := in.command(prefix, append([]string{"install", "-y", "--no-install-recommends"}, names...)...)
	fmt.Fprintf(in.Out, "$ %s\n", install)
	if err := in.Runner.Run(ctx, install); err != nil {
		return errors.Join(err, updated)
	}
	return nil
}

// rights returns what has to stand before apt-get for it to be allowed.
func (in Installer) rights() ([]string, error) {
	if in.Machine.Root {
		return nil, nil
	}
	if _, err := in.Runner.Find("sudo"); err != nil {
		return nil, errors.New("installing packages takes root, and there is no sudo here")
	}
	if in.Asking {
		return []string{"sudo"}, nil
	}
	// Nobody can type a password: fail rather than wait for one.
	return []string{"sudo", "-n"}, nil
}

// command builds an apt-get call that asks no questions and waits its turn
// when another one is at work.
func (in Installer) command(prefix []string, args ...string) Command {
	words := append([]string{}, prefix...)
	words = append(words, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-o", "DPkg::Lock::Timeout=300")
	words = append(words, args...)
	c := Command{Name: words[0], Args: words[1:], Stdout: in.Out, Stderr: in.Out, Foreground: in.Asking}
	if in.Asking {
		c.Stdin = os.Stdin
	}
	return c
}

// failure tells what could not be had, why, and what to run by hand.
func (in Installer) failure(names []string, cause error) error {
	root, as := in.Machine.Root, ""
	if _, err := in.Runner.Find("sudo"); err != nil && !root {
		root, as = true, ", as root"
	}
	return fmt.Errorf("%w: %s: %w\nBy hand%s:\n  %s", ErrMissing, strings.Join(names, ", "), cause, as,
		InstallLine(in.Machine.Family, root, names))
}
