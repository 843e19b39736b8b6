package exports

import (
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// What a participant chooses from, and what formulas compare with: the same
// words of one language on both sides.
var (
	sizeNames         = map[batch.Size]string{batch.Pint: words.Key("pint"), batch.Quart: words.Key("quart")}
	mouthNames        = map[reference.Mouth]string{reference.WideMouth: words.Key("wide"), reference.NarrowMouth: words.Key("narrow")}
	headspaceRowNames = map[string]string{"liquid": words.Key("liquid"), "dry": words.Key("dry"), "juice": words.Key("juice")}
)

// How a crop is weighed when bought, in the words of the table, where the
// weight holds more than what is trimmed.
var (
	inPods = words.Key("in pods")
	inHusk = words.Key("in husk")
)

func (o *own) yesNo(yes bool) string {
	if yes {
		return o.Say("yes")
	}
	return o.Say("no")
}

// size is a size of a pack as a text of a formula.
func (o *own) size(s batch.Size) string { return quoted(o.Say(sizeNames[s])) }

// onTray is the test whether the pieces are frozen loose on a tray first.
func (o *own) onTray() string {
	yes := quoted(o.yesNo(true))
	return `AND(tray=` + yes + `,INDEX(tray_list,treatment_row)=` + yes + `)`
}

// headspaceKey names a cell of the headspace table; chosenKey is the formula
// for the one that is chosen.
func (o *own) headspaceKey(pack string, s batch.Size, m reference.Mouth) string {
	return o.Say(headspaceRowNames[pack]) + " " + o.Say(sizeNames[s]) + " " + o.Say(mouthNames[m])
}

const chosenKey = `headspace_rule&" "&container&" "&mouth`

// bought says how a crop is weighed when bought.
func (o *own) bought(r ownRecord) string {
	if r.yield.AsBought == "" {
		return o.Say(asItIs)
	}
	return o.Say(string(r.yield.AsBought))
}

// symbol is the symbol of a unit in the language of the sheet.
func (o *own) symbol(unit string) string { return symbol(o.Voice, unit) }

// quoted is a text inside a formula.
func quoted(text string) string { return `"` + strings.ReplaceAll(text, `"`, `""`) + `"` }
