// Package reference is the crop table and all data with their sources: crops,
// treatments, preparation, yields, headspace, the numeric rules of the method.
//
// The shipped table (Shipped) is read from CSV files embedded from data/ and is
// never overwritten: an educator's changes are a layer of Edit values laid over
// a copy (Table.With). Minutes never travel alone: a Treatment is one record
// with the rule that starts the clock, the chilling rule, headspace, pack,
// water rule, source and edition. Numbers carry over from the sources with the
// source's id; all sentences are our own.
//
// Of several published values one is chosen for a treatment and the others stay
// with it (Treatment.Also). Standing says whether a value was read on a page of
// its source, read as a quotation, or only remembered and not yet read.
//
// Compositions, pieces, enzymes and typical containers (produce.go) feed the
// heat model: estimates, marked as such row by row, on which nothing rests that
// people are told to do.
//
// Reading is strict. A wrong or missing column, a duplicate id, a minute that
// is text or a source that is not listed is a *DataError with file, line and
// column.
//
// Views (Table.Rows, CountBy, Describe) return row numbers and counts only; the
// values on a screen always come from the table itself.
package reference
