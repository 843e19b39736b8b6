package app

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
)

// Settings is what the program remembers about how somebody works. Nonsense in
// the file falls back to the usual value.
type Settings struct {
	Variant string   `json:"variant"` // light, dark, high contrast
	Scale   float32  `json:"scale"`   // of the type, 1 is normal
	Recent  []string `json:"recent"`  // class files, the latest first
	Folder  string   `json:"folder"`  // last folder used
	Area    string   `json:"area"`    // area shown last
	Paper   string   `json:"paper"`   // letter or a4
	Columns []string `json:"columns"` // of the crop table, beside the crop; none: the usual ones

	Language words.Language `json:"language"` // of the window
	Greeted  bool           `json:"greeted"`  // the pointers of the first start were put away
	Width    float32        `json:"width"`    // of the window
	Height   float32        `json:"height"`
}

// The window is never opened smaller than this.
const leastWidth, leastHeight = 800, 600

// scales are the steps of larger and smaller type.
var scales = []float32{0.85, 1, 1.15, 1.3, 1.5}

const mostRecent = 8

func usualSettings() Settings {
	return Settings{Variant: string(look.Light), Scale: 1, Area: "class", Paper: "letter", Width: 1024, Height: 700}
}

// readSettings reads the settings from a folder. Whatever is wrong with them
// is harmless.
func readSettings(folder string) Settings {
	s := usualSettings()
	data, err := os.ReadFile(filepath.Join(folder, "settings.json"))
	if err != nil || json.Unmarshal(data, &s) != nil {
		s = usualSettings()
	}
	return s.sane()
}

func (s Settings) sane() Settings {
	s.Variant = string(look.VariantNamed(s.Variant))
	if !slices.Contains(scales, s.Scale) {
		s.Scale = 1
	}
	if s.Language != words.Spanish {
		s.Language = words.English
	}
	if s.Paper != "a4" {
		s.Paper = "letter"
	}
	s.Width = min(max(s.Width, leastWidth), 4000)
	s.Height = min(max(s.Height, leastHeight), 3000)
	if len(s.Recent) > mostRecent {
		s.Recent = s.Recent[:mostRecent]
	}
	if info, err := os.Stat(s.Folder); err != nil || !info.IsDir() {
		s.Folder = homeFolder()
	}
	return s
}

// write keeps the settings in a folder.
func (s Settings) write(folder string) error {
	data, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return fmt.Errorf("keep settings: %w", err)
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("keep settings: %w", err)
	}
	if err := disk.Replace(filepath.Join(folder, "settings.json"), append(data, '\n')); err != nil {
		return fmt.Errorf("keep settings: %w", err)
	}
	return nil
}

// used puts a class file in front of the recent ones.
func (s *Settings) used(path string) {
	s.Folder = filepath.Dir(path)
	recent := slices.DeleteFunc(slices.Clone(s.Recent), func(p string) bool { return p == path })
	s.Recent = append([]string{path}, recent...)
	s.Recent = s.Recent[:min(len(s.Recent), mostRecent)]
}

// forget drops a class file from the recent ones.
func (s *Settings) forget(path string) {
	s.Recent = slices.DeleteFunc(s.Recent, func(p string) bool { return p == path })
}

// beside is the next scale up (+1) or down (−1).
func (s Settings) beside(by int) float32 {
	i := slices.Index(scales, s.Scale)
	return scales[max(0, min(i+by, len(scales)-1))]
}

func homeFolder() string {
	if home, err := os.UserHomeDir(); err == nil {
		return home
	}
	return "."
}

// DataFolder is where settings, table edits and recovery copies live: a folder
// kettleside-data beside the program where there is one, otherwise the user's
// folder for such things.
func DataFolder() string {
	if program, err := os.Executable(); err == nil {
		beside := filepath.Join(filepath.Dir(program), "kettleside-data")
		if info, err := os.Stat(beside); err == nil && info.IsDir() {
			return beside
		}
	}
	if config, err := os.UserConfigDir(); err == nil {
		return filepath.Join(config, "kettleside")
	}
	return filepath.Join(homeFolder(), ".kettleside")
}
