// Package exports puts a class that was worked through on paper and into
// files: the handout workbook (Workbook, WriteWorkbook), its pages as a PDF (PDF,
// WritePDF), every figure as JSON (Numbers) and as a readable list (Plain).
//
// Nothing is computed here. Figures, estimates, findings, shopping and label
// texts come from class.Worked, rules and sources from its table, all other
// words from package content. The one exception computes for its reader: the
// sheet “Your own numbers” holds live formulas, and each formula travels with
// the value that the program worked out for the same entries.
//
// Everything printed is said by the voice of the class (say.go), in the language
// that it was worked through in: tabs, heads, notes, choices, and the words that
// formulas compare. Defined names, ids and the names in JSON are the same in all
// languages. What has no translation is listed on the first sheet.
//
// The way of a workbook: a plain description (a book of sheets, a sheet of
// rows, a row of cells with role, value, formula and name; describe.go) is made
// by one builder a sheet, checked (names.go), and written by one writer
// (write.go) in the sorted order of zip.go. The same class, table and options
// give the same bytes. Only this package writes with excelize.
//
// A PDF is drawn from the same description (pdf.go): its rows get their heights
// from the widths of the face that is embedded (pdfface.go), its pages begin
// where those of the workbook do. Only this package uses fpdf.
package exports
