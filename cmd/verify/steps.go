package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/cmd/internal/setup"
)

// packagesStep is the name of the step that installs system packages.
const packagesStep = "packages"

// A step is one check.
type step struct {
	name  string
	title string
	needs []setup.Need // the system packages it cannot do without
	run   func(ctx context.Context, b *bench) error
}

// allSteps lists the steps in the order they run.
func allSteps() []step {
	return []step{
		{packagesStep, "install the system packages the steps need", nil, nil},
		{"format", "sources formatted, modules as recorded", nil, checkFormat},
		{"vet", "go vet on every package", []setup.Need{setup.Window}, checkVet},
		{"nocgo", "everything but the window compiles without cgo", nil, checkNoCgo},
		{"test", "tests without a display and without cgo", []setup.Need{setup.Papers, setup.Solver}, checkTests},
		{"race", "race detector", []setup.Need{setup.Window, setup.Papers}, checkRaces},
		{"staticcheck", "static analysis", []setup.Need{setup.Window}, checkStatic},
		{"window", "tests of the real window on a display in memory", []setup.Need{setup.Window, setup.Screen, setup.Papers}, checkWindow},
		{"cross", "programs without a window, for Windows, macOS and Linux", nil, checkCross},
	}
}

// choose picks the steps named in only, all of them if it is empty, and gives
// the step that installs packages what the others need. That step comes along
// unasked whenever one of the others needs packages.
func choose(all []step, only string) ([]step, error) {
	wanted, err := splitNames(all, only)
	if err != nil {
		return nil, err
	}
	picked := slices.DeleteFunc(slices.Clone(all), func(s step) bool {
		return s.name == packagesStep || len(wanted) > 0 && !slices.Contains(wanted, s.name)
	})
	if slices.Contains(wanted, packagesStep) { // asked for by name, it installs what any step needs
		return append(packagesFor(all, needsOf(all)), picked...), nil
	}
	return withPackages(all, picked), nil
}

// withPackages puts the step that installs packages before steps that need some.
func withPackages(all, picked []step) []step {
	return append(packagesFor(all, needsOf(picked)), picked...)
}

// packagesFor is the step that installs what is needed; none where nothing is.
func packagesFor(all []step, needs []setup.Need) []step {
	if len(needs) == 0 {
		return nil
	}
	first := all[slices.IndexFunc(all, func(s step) bool { return s.name == packagesStep })]
	first.needs = needs
	first.run = func(ctx context.Context, b *bench) error { return b.install(ctx, needs) }
	return []step{first}
}

// splitNames takes a list of step names apart and checks each of them.
func splitNames(all []step, list string) ([]string, error) {
	if list == "" {
		return nil, nil
	}
	var known []string
	for _, s := range all {
		known = append(known, s.name)
	}
	names := strings.Split(list, ",")
	for i, name := range names {
		names[i] = strings.TrimSpace(name)
		if !slices.Contains(known, names[i]) {
			return nil, fmt.Errorf("verify: there is no step %q; the steps are %s", names[i], strings.Join(known, ", "))
		}
	}
	return names, nil
}

// needsOf unites what the steps need, in the order of the needs.
func needsOf(steps []step) []setup.Need {
	var needs []setup.Need
	for _, s := range steps {
		needs = append(needs, s.needs...)
	}
	slices.Sort(needs)
	return slices.Compact(needs)
}
