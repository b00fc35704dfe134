// Package name reads people's names as they stand on results sheets: it
// repairs what other programs broke, tells the given name from the family
// name, says when a text names nobody or several people, makes the folded keys
// that linkage compares, and prints a name as its owner would write it.
//
// Nothing here infers a sex, an age or an origin from a name.
package name
