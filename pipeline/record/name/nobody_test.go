package name

import "testing"

// Words for nobody in many languages, in either order, and the marks that a spreadsheet
// leaves where it finds nobody; people called like them are somebody (common practice, no
// source).
func TestNobody(t *testing.T) {
	for _, text := range []string{"#NV", "#BEZUG!", "Private", "Name withheld", "(withheld)", "Непознати тркач", "Non, identificato", "Sin identificar", "Não identificado",
		"Known, Not", "Nother, A", "A. Nonymous", "غير معروف", "אלמוני", "이름 없음", "무명", "氏名不詳", "姓名不详", "Невідомий, учасник", "Nežinomas bėgikas", "Неизвестен бегач",
		"Không rõ", "Vô danh", "Tidak diketahui", "Tanpa nama", "ไม่ทราบชื่อ", "Haijulikani", "Без имена", "Runner, Mystery", "Spare bib", "name illegible", "Position not used", "Withheld by request", "barcode not scanned", "Unknown M40", "Man", "Frau", "No first name", "Nepoznati trkač",
		"no slip", "No ticket", "Guest of Iain", "guest of Jo Lee", "Gast von Anna", "Ospite di Luca", "Friend of Ann", "someone's dad", "visitor from Mill Water", "Visitor from Vale", "didn't catch name", "missed her name",
		"ohne Code", "Ohne Startnummer", "brak danych", "brak, danych", "sin dorsal", "sans dossard", "bez čísla", "geen nummer", "utan nummerlapp", "nincs név", "keine Daten",
		"spectator", "Beispiel", "Barcode test", "member of the public", "could not read", "wouldn't say", "tall man, blue vest", "unscanned", "Spare", "did not scan", "John Doe", "Test", "Boy", "Tail walker", "Jo's brother", "Anna’s friend", "Lady with", "Jo's Brother",
		"token lost", "name smudged", "button pressed by mistake", "position not claimed", "Barcode forgotten", "First timer", "Race Director", "Lead cyclist", "dummy entry", "double press", "to claim", "Male average", "New lady", "Last man", "awaiting claim", "app failed", "young lad",
		"customer", "Forgot Number", "band broken", "Sample Entry", "Example Name", "Vorname Nachname", "Jane Example", "Barcode, No", "Danych, Brak", "A Runner", "RUNNER A", "A, Runner", "Joe Bloggs", "Did not register", "saknas", "Mangler navn", "Name fehlt", "Naam, Geen", "Nome, Senza", "N Other, A"} {
		if !Parse(text).Unnamed {
			t.Errorf("%q is somebody", text)
		}
	}
	for _, text := range []string{"A. Walker", "Anna Mangler", "Bo Bloggs", "Jo Spare", "Jo Doe", "Tess Test", "Boy George", "Jo Girl", "Dan Walker", "Pan W", "Frank Private", "Don Missing", "Guy Guest", "Grace Runner", "Jo Value", "Private, Frank", "Álex Ref", "Nora Noname", "Не Зна", "Junior No", "No Young-Mi", "No Slip", "Guest, Jo of", "Son Le", "Jo of Mull", "Di de Vries", "Sem Code Silva", "Bez Card-Lee", "Ohne Schmidt", "Sem Naber", "Anna Dad", "Guest From", "Jo Press", "jo steward", "M Boy", "Lou First", "Junior Average-Lee", "Claire Clock", "Bo Bike", "Lost Mary", "Missed Lee", "Lee, No", "Kim, No-Mi", "Mark Band", "Tom Card", "Ana Nombre", "Rick Sample", "Max Place", "Jo Person"} {
		if Parse(text).Unnamed {
			t.Errorf("%q is nobody", text)
		}
	}
}

// A word for born and a year behind a name are no part of it.
func TestYearBehindName(t *testing.T) {
	for _, text := range []string{"Falk Rautenberg Jg. 1984", "Falk Rautenberg *1984", "Falk Rautenberg (Jg. 84)"} {
		if n := Parse(text); n.Given != "falk" || n.Family != "rautenberg" {
			t.Errorf("%q: %q %q", text, n.Given, n.Family)
		}
	}
}

// Words beside a name that set it in doubt, and such as do not.
func TestUnsure(t *testing.T) {
	for _, text := range []string{"maybe Jo Lee", "possibly Jo Lee", "Jo Lee for Ann Fox", "Jo Lee instead of Ann Fox", "Jo Lee running as Ann Fox", "Ann Fox not Jo Lee", "Osier Harriers B", "Mill Runners", "Quayford AC", "ignore Jo Lee", "test Jo Lee", "Jo Lee tbc", "vielleicht Jo Lee", "Quayford Relay Team"} {
		if n := Parse(text); !n.Unsure && !n.Several && !n.Unnamed {
			t.Errorf("%q is sure", text)
		}
	}
	for _, text := range []string{"Jo Lee", "Anna van der Berg", "Luis de la Cruz", "rob Alden Smith", "Maria da Costa e Silva", "Runner Lee", "sue hallam", "Juan Vega y Ortiz", "Ali ibn Abi Talib", "Jan op de Beeck", "Ana con", "Check Lee"} {
		if n := Parse(text); n.Unsure {
			t.Errorf("%q is in doubt", text)
		}
	}
}
