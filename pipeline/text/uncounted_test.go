package text

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestDoubtedTime(t *testing.T) {
	for s, want := range map[string]bool{
		"time not confirmed": true, "time to be checked": true, "time may be wrong": true, "zeit unsicher": true, "temps a verifier": true, "time?": true, "check time": true,
		"did 4 km": true, "4k only": true, "ran 6 km": true, "ran off course": true, "erreur de parcours": true, "parcours raccourci": true,
		"ran with husband's barcode": true, "ran as kit larder": true, "ran as kit": true, "ran in kit's place": true, "ran friday": true, "ran on thursday": true,
		"time ok, checked": false, "time confirmed": false, "time checked": false, "ran as a bear": false, "ran as guide": false, "ran on tired legs": false, "ran in new shoes": false, "ran 5 km": false, "ran 10 km before": false, "fell at 3 km": false, "+ 2 km warm-up": false, "course record": false, "time wrong last week": false,
		"first time here": false, "lost barcode": false, "wrong shoes": false, "of course": false, "same time as last week": false, "5 km": false, "ran with carl": false, "": false,
	} {
		if got := DoubtedTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// Lines whose runner went another way, whose time nobody took or that stand for somebody else are doubted; what was
// so another time, or is only told, is not.
func TestAgainstTime(t *testing.T) {
	for s, want := range map[string]bool{
		"stopped injured": true, "half distance": true, "missed the turn": true, "got lost": true, "extra lap": true, "ran extra lap": true, "timing failed": true, "missed scan": true, "swapped with ann": true, "no proper time": true, "wrong way at the bridge": true, "removed at own request": true, "treadmill at home": true, "out at 3 km": true, "time to be confirmed": true, "time to beat 24": false, "at home in the woods": false, "out of breath at 3 km": false, "ran elsewhere": true,
		"stopped to tie lace": false, "half term": false, "lost barcode": false, "extra cake": false, "hand timed": false, "late start": false, "from phone": false,
	} {
		if got := AgainstTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// A best time is no estimate.
func TestBestTimeStands(t *testing.T) {
	for folded, want := range map[string]bool{"best time since 2019": false, "best time ever": false, "est time": true, "time est": true} {
		if got := AgainstTime(folded, 5); got != want {
			t.Errorf("%q: %v", folded, got)
		}
	}
}

// What is said in other words, and in other languages, speaks against a line as well.
func TestAgainstTimeInWords(t *testing.T) {
	for s, want := range map[string]bool{
		"unknown runner": true, "name unknown": true, "okand lopare": true, "atleta sconosciuto": true, "nazwisko nieznane": true, "voir ci-dessus": true, "lasd fent": true, "ks. ylla": true, "see no. 3": true,
		"ran it on sunday": true, "own run on friday": true, "juoksi sunnuntaina": true, "correu no domingo": true, "biegl w niedziele": true, "different day": true,
		"2k junior run": true, "10k runner": true, "2.5k only": true, "1 mile only": true, "stopped at 3k": true, "sadece 2 km": true, "so 2 km": true,
		"ran with tom's barcode": true, "ran under another name": true, "wore wrong number": true, "token mix-up": true, "dorsal cambiado": true, "met andermans nummer": true,
		"registrado dos veces": true, "iki kez kaydedildi": true, "zapsan dvakrat": true, "came through twice": true, "dubbele invoer": true, "mukerrer": true,
		"keine zeit genommen": true, "sure belirsiz": true, "tahmini sure": true, "osaker": true, "stroket": true, "alkol": false, "sanal": true, "testregel": true, "linha de teste": true, "gecersiz": true, "fuera de carrera": true,
		"volunteer, scanned by mistake": true, "not this person": true, "ran it at home": true, "ran it alone on friday": true, "scanned for a friend": true, "was not there": true, "sent the wrong way by a marshal": true, "took wrong path": true,
		"cut through the car park": true, "cut across the field": true, "took the short route": true, "shorter route": true, "ran just 3k": true, "cancel this line": true, "time not recorded": true, "hand timed, approx": true,
		"kierros puuttuu": true, "время примерное": true, "дубль": true, "周回不足": true, "参考記録": true, "short course record": false, "ran in the wrong shoes": false, "wrong shoes": false, "cut 10 s off pb": false,
		"found a short way home": false, "did the short warm-up": false, "no path to mud": false, "hand timed": false, "wasn't feeling well": false, "not there yet": false, "was there early": false, "cake by mistake": false, "a mistake to eat before": false,
		"first 10k next week": false, "retirement party": false, "false": false, "5k on tired legs": false, "2 km from home": false, "sunday best": false, "ran with tom": false, "forgot tom's barcode": false, "second time": false,
		"runs on fridays too": false, "out and back course": false, "ran for cancer research": false, "great test of fitness": false, "new name badge": false, "no time to lose": false, "ran 5k": false, "vi ses": false,
	} {
		if got := AgainstTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// Remarks are folded before they are looked up: a word with a mark on a letter would never be found.
func TestWordsAreFolded(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) < 5 {
		t.Fatal(err, files)
	}
	list, n := regexp.MustCompile("(?s)wordsOf\\(`([^`]*)`\\)"), 0
	for _, f := range files {
		source, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range list.FindAllStringSubmatch(string(source), -1) {
			for _, w := range strings.Fields(m[1]) {
				if n++; plain(w) != w {
					t.Errorf("%s: %q is %q without its marks", f, w, plain(w))
				}
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d words", n)
	}
}
