package class

import "encoding/json"

// upgrade brings the tree of a class file of an older schema into the shape of
// this one. What does not have the shape of the older schema either is left as
// it stands, for the filler to name.
//
// Schema 1 had only the number of burners.
func upgrade(object map[string]any) {
	if schema, _ := object["schema"].(json.Number); schema != "1" {
		return
	}
	object["schema"] = json.Number("2")
	kit, _ := object["kit"].(map[string]any)
	if n, ok := kit["burners"].(json.Number); ok {
		kit["burners"] = []any{map[string]any{"name": "Burner", "count": n}}
	}
}
