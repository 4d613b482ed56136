// Package lexis cuts the text of a cell into numbers, words and marks, and finds the
// phrases of a list in it, in whatever letters, accents and dashes it was typed.
package lexis
