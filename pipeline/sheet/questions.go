package sheet

import (
	"slices"
	"strings"
)

// A form asks for what its columns hold: "Wat is je naam?", "Em que ano nasceu?".

// readQuestion matches a heading that is a question by the words of it that headings are made
// of: short words, and those that questions begin with, are left out.
func (l *lexicon) readQuestion(heading string) guess {
	words := strings.Fields(fold(strings.NewReplacer("?", " ", "¿", " ", "*", " ").Replace(heading)))
	if len(words) < 2 || len(words) > 10 {
		return guess{}
	}
	if f := strings.Join(words, " "); askForName[f] {
		return guess{meaning: Name, known: true}
	}
	sexes := 0
	if slices.ContainsFunc(words, func(w string) bool { return menWords[w] && len(w) > 2 }) {
		sexes++
	}
	if slices.ContainsFunc(words, func(w string) bool { return womenWords[w] && len(w) > 2 }) {
		sexes++
	}
	if sexes == 2 {
		return guess{meaning: Sex, known: true}
	}
	words = slices.DeleteFunc(words, func(w string) bool {
		_, known := headingWords[w]
		return !known && (len([]rune(w)) <= 4 || questionWords[w])
	})
	return guessFrom(strings.Join(words, " "))
}

// questionWords are words of questions of more than four letters. Common practice on forms,
// no source.
var questionWords = set(`hvilket hvilken welche welcher welches welke wanneer quelle quelles cuales comment quale quali hvordan vilket vilken jakie jaka jaki mikae mika sinun milyen mennyi melyik koliko kakšno kaksno kakva kakav nedir neydi hangi
	какои какая какое каков какова ваша ваше вашето твое якии яка яке ποιος ποια ποιο ειναι votre leur vostro vostra deine deinen ihren jouw jullie twoje twoj teidan dumneavoastra care este jusu jusu koks kokia kads kada missugune milline sinu
	birth finish total official today`)

// askForName are questions for a name that have no word for it.
var askForName = set("", "hvad hedder du", "hva heter du", "vad heter du", "wie heisst du", "wie heissen sie", "wie heiszt du", "hoe heet je", "hoe heet jij", "hoe heet u", "comment t appelles tu", "comment vous appelez vous",
	"como te llamas", "como se llama", "como se llama usted", "come ti chiami", "come si chiama", "jak sie nazywasz", "jak se jmenujes", "jak se jmenujete", "ako sa volas", "ako sa volate", "hogy hivnak", "kako ti je ime", "kako se zoves", "kako se zovete",
	"как тебя зовут", "как вас зовут", "як тебе звати", "як вас звати", "как се казваш", "как се казвате", "πως σε λενε", "πως λεγεσαι", "cum te numesti", "cum va numiti", "mis su nimi on", "ka tevi sauc", "ka jus sauc", "koks tavo vardas", "who are you")
