package batch

import "example.org/kettleside/app/measure"

// iceEntered is the ice that a batch says it has, beside the ice by the rule,
// which it never changes. Where that is less, a person should know.
func (w *worker) iceEntered() {
	if !w.Ice.Given() {
		return
	}
	amount, _ := w.mass(w.Ice.SI())
	text := w.iceText()
	f := measure.Figure{
		ID: "ice-entered", Label: w.Say("Ice at hand"), Value: amount, High: amount, Unit: w.massUnit().Symbol,
		Text: text, Working: w.Say("as entered: %s", w.Ice), Basis: measure.Entered, Source: "entered",
	}
	if !w.out.Ice.InWords() {
		f.Working = w.Say("as entered: %s; the rule asks for %s", w.Ice, w.out.Ice.Text)
	}
	w.out.IceEntered = f
	rule := w.table.Rule("ice-lb-per-lb")
	if w.out.Ice.InWords() || w.Ice.SI() >= w.Prepared.SI()*rule.Value*(1-1e-9) {
		return
	}
	w.find(measure.Mind, "ice-under-rule", rule.Source,
		w.Say("%s of ice is entered for this batch; the rule asks for %s.", text, w.out.Ice.Text),
		w.Say("By the rule have at least %s at hand.", w.out.Ice.Text))
}

// iceText is the ice in the bath: as entered, or by the rule.
func (w *worker) iceText() string {
	if !w.Ice.Given() {
		return w.out.Ice.Text
	}
	if w.Ice.Unit() == w.massUnit() {
		return w.Ice.String() // to the last digit that was typed
	}
	_, text := w.mass(w.Ice.SI())
	return text
}

// bathIceKg is the ice in the bath; 0 where the rule of ice does not count.
func (w *worker) bathIceKg() float64 {
	switch {
	case w.out.Ice.InWords():
		return 0
	case w.Ice.Given():
		return w.Ice.SI()
	}
	return w.Prepared.SI() * w.table.Rule("ice-lb-per-lb").Value
}
