package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"example.org/kettleside/cmd/internal/setup"
)

// demoName is what the shipped class and its workbook are called on disk.
const demoName = "demo-class"

// classSuffix ends the name of every class file.
const classSuffix = ".kettleside"

// withoutWindow writes the workbook of a class and prints its figures. With no
// class it first writes the shipped one, so that there is a file to look at
// and to change.
func (s starter) withoutWindow(ctx context.Context, class string) error {
	s.say("This needs no system packages. Compiling the program that writes handouts.")
	program, err := s.build(ctx, handoutsProgram, "", "CGO_ENABLED=0")
	if err != nil {
		return err
	}
	made := filepath.Join(s.root, madeFolder)
	if err := os.MkdirAll(made, 0o755); err != nil {
		return fmt.Errorf("make the folder for what is written: %w", err)
	}
	book := filepath.Join(made, bookName(class))
	demo := class == ""
	if demo {
		class = filepath.Join(made, demoName+classSuffix)
		if err := s.handouts(ctx, program, "demo", "-force", class); err != nil {
			return err
		}
	}
	if err := s.handouts(ctx, program, "workbook", class, book); err != nil {
		return err
	}
	s.say("")
	if err := s.handouts(ctx, program, "numbers", "-plain", class); err != nil {
		return err
	}
	s.say("")
	if demo {
		s.where("Class file", class)
	}
	s.where("Workbook", book)
	return nil
}

// bookName names the workbook after the class file.
func bookName(class string) string {
	if class == "" {
		return demoName + ".xlsx"
	}
	return strings.TrimSuffix(filepath.Base(class), classSuffix) + ".xlsx"
}

func (s starter) handouts(ctx context.Context, program string, args ...string) error {
	err := s.runner.Run(ctx, setup.Command{
		Name: program, Args: args, Dir: s.here, Env: s.env, Stdout: s.out, Stderr: s.errs,
	})
	if err != nil {
		return fmt.Errorf("the handouts program failed: %w", err)
	}
	return nil
}

// where says where a file is, seen from the current folder and in full.
func (s starter) where(what, path string) {
	short, err := filepath.Rel(s.here, path)
	if err != nil {
		short = path
	}
	s.say("%s: %s", what, short)
	s.say("  in full: %s", path)
}
