package sheet

import "slices"

// Meaning says what a column holds. The zero Meaning is Other: a column that
// is kept as text and used for nothing.
type Meaning uint8

// The meanings, first those that the record is made of, then the look-alikes
// that are recognised so that they are not taken for something else.
const (
	Other Meaning = iota
	Position
	Name
	GivenName
	FamilyName
	Time // the official time of the sheet; for a road race that is the gun time
	GunTime
	ChipTime
	Age
	BirthYear
	BirthDate
	AgeGroup
	Sex
	Club
	Number // the runner's number or bar code
	Course
	Date
	Session
	Distance
	Status
	Notes

	Gap // behind the winner or the one in front
	Pace
	Split
	GroupPlace
	SexPlace
	TotalRuns
	Points
	AgeGrade
	PersonalBest

	Role // what somebody on a list of volunteers did
)

var meaningWords = [...]string{
	Other: "other", Position: "position", Name: "name", GivenName: "given-name", FamilyName: "family-name",
	Time: "time", GunTime: "gun-time", ChipTime: "chip-time", Age: "age", BirthYear: "birth-year",
	BirthDate: "birth-date", AgeGroup: "age-group", Sex: "sex", Club: "club", Number: "number",
	Course: "course", Date: "date", Session: "session", Distance: "distance", Status: "status", Notes: "notes",
	Gap: "gap", Pace: "pace", Split: "split", GroupPlace: "group-place", SexPlace: "sex-place",
	TotalRuns: "total-runs", Points: "points", AgeGrade: "age-grade", PersonalBest: "personal-best",
	Role: "role",
}

// String is the word used in the configuration and in descriptions.
func (m Meaning) String() string {
	if int(m) < len(meaningWords) {
		return meaningWords[m]
	}
	return "other"
}

// MeaningWords are the words that String prints, and that the settings may give to a
// heading.
func MeaningWords() []string { return slices.Clone(meaningWords[:]) }

// ParseMeaning reads the word that String prints.
func ParseMeaning(word string) (Meaning, bool) {
	for m, w := range meaningWords {
		if w == word {
			return Meaning(m), true
		}
	}
	return Other, false
}
