package app

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"time"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
)

// recoveryDelay is how long after a change the recovery copy is written.
const recoveryDelay = 2 * time.Second

// recoveryName begins the name of a recovery copy; the number of the process
// that wrote it follows, so that two windows do not share one.
const recoveryName = "recovery-"

// recoveryAge is when a copy counts as left behind although a process has its
// number: the system gives numbers out again.
const recoveryAge = 24 * time.Hour

// setAsideRecovery renames a copy of an earlier run that had the number which
// this run has now, before this run writes or removes its own.
func (d *desk) setAsideRecovery() {
	if _, err := os.Stat(d.recoveryFile()); err != nil {
		return
	}
	if err := os.Rename(d.recoveryFile(), filepath.Join(d.folder, recoveryName+"0"+class.Extension)); err != nil {
		fyne.LogError("a recovery copy could not be set aside", err)
	}
}

func (d *desk) recoveryFile() string {
	return filepath.Join(d.folder, recoveryName+strconv.Itoa(os.Getpid())+class.Extension)
}

// scheduleRecovery writes a copy of an unsaved class a moment after the last
// change, for the day when the program ends without being asked to.
func (d *desk) scheduleRecovery() {
	if d.recovery != nil {
		d.recovery.Stop()
	}
	if !d.session.Unsaved() {
		d.forgetRecovery()
		return
	}
	d.recovery = time.AfterFunc(recoveryDelay, func() { fyne.Do(d.writeRecovery) })
}

func (d *desk) writeRecovery() {
	if !d.session.Unsaved() {
		return
	}
	data, err := class.Encode(d.session.Class())
	if err == nil {
		err = os.MkdirAll(d.folder, 0o755)
	}
	if err == nil {
		err = disk.Replace(d.recoveryFile(), data)
	}
	if err != nil {
		fyne.LogError("no recovery copy could be written", err)
	}
}

// forgetRecovery removes the copy of this run; those of other runs stay until
// somebody has answered for them.
func (d *desk) forgetRecovery() {
	if d.recovery != nil {
		d.recovery.Stop()
	}
	os.Remove(d.recoveryFile())
}

// leftBehind is the newest copy of a run that has ended, "" where there is
// none.
func (d *desk) leftBehind() string {
	files, _ := filepath.Glob(filepath.Join(d.folder, recoveryName+"*"+class.Extension)) // the pattern is well-formed
	newest, when := "", time.Time{}
	for _, file := range files {
		number := strings.TrimSuffix(strings.TrimPrefix(filepath.Base(file), recoveryName), class.Extension)
		pid, err := strconv.Atoi(number)
		info, statErr := os.Stat(file)
		if err != nil || statErr != nil {
			continue
		}
		if fresh := time.Since(info.ModTime()) < recoveryAge; file == d.recoveryFile() || fresh && d.running(pid) {
			continue
		}
		if info.ModTime().After(when) {
			newest, when = file, info.ModTime()
		}
	}
	return newest
}

// running says whether a process is there, as far as the system tells.
func running(pid int) bool {
	process, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	if runtime.GOOS == "windows" { // finding it is the answer there
		return true
	}
	err = process.Signal(syscall.Signal(0))
	return err == nil || errors.Is(err, os.ErrPermission)
}

// offerRecovery asks whether an unsaved class of an earlier run is wanted.
func (d *desk) offerRecovery() {
	file := d.leftBehind()
	if file == "" {
		return
	}
	c, err := class.Open(file)
	if err != nil {
		d.ask.Problem(look.Say("A recovery copy cannot be read"), words.Errorf("%w; the file is left where it is: %s", err, file))
		return
	}
	d.ask.Question(look.Say("Bring back unsaved work?"),
		look.Say("Kettleside ended before “%s” was saved. Its last state was kept.", titleOf(c)),
		ask.Answer{Label: look.Say("Bring it back"), Do: func() { d.bringBack(file, c) }},
		ask.Answer{Label: look.Say("Discard it"), Do: func() { os.Remove(file) }},
		ask.Answer{Label: look.Say("Ask me later")})
}

// bringBack puts the class of an earlier run on the desk. Its copy goes only
// when this run has one of its own.
func (d *desk) bringBack(file string, c class.Class) {
	d.session.StartUnsaved(c)
	d.writeRecovery()
	if _, err := os.Stat(d.recoveryFile()); err == nil {
		os.Remove(file)
	}
}
