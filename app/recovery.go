package app

import (
	"bytes"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"github.com/natefinch/atomic"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/ask"
)

// recoveryDelay is how long after a change the recovery copy is written.
const recoveryDelay = 2 * time.Second

func (d *desk) recoveryFile() string { return filepath.Join(d.folder, "recovery"+class.Extension) }

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
		err = atomic.WriteFile(d.recoveryFile(), bytes.NewReader(data))
	}
	if err != nil {
		fyne.LogError("no recovery copy could be written", err)
	}
}

func (d *desk) forgetRecovery() {
	if d.recovery != nil {
		d.recovery.Stop()
	}
	os.Remove(d.recoveryFile())
}

// offerRecovery asks whether an unsaved class of the last time is wanted.
func (d *desk) offerRecovery() {
	c, err := class.Open(d.recoveryFile())
	if err != nil {
		return // none, or not usable
	}
	d.ask.Question("Bring back unsaved work?",
		"Kettleside ended last time before “"+titleOf(c)+"” was saved. Its last state was kept.",
		ask.Answer{Label: "Bring it back", Do: func() { d.session.StartUnsaved(c) }},
		ask.Answer{Label: "Discard it", Do: d.forgetRecovery})
}
