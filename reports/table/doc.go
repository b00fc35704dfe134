// Package table holds the one table model of the reports and its renderers:
// a workbook (Office Open XML, ECMA-376), text for a terminal, and Markdown.
//
// A [Book] has tabs, a [Tab] has blocks: titles, paragraphs, tables, pairs of
// tables side by side, charts. A [Table] has columns, each with a [Kind], and
// rows of [Value]. A report is built once as a Book; what differs between a
// workbook and a text dump is only how a Value is shown. The text dump
// ([Book.Text]) is what golden tests compare.
//
// Values keep their nature in a workbook: a running time is a duration that
// can be sorted and averaged, a date is a date, a name is always text even
// where it begins with "=", "+", "-" or "@".
package table
