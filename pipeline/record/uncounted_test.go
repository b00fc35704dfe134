package record

import "testing"

// Notes that say that a line does not count, or that not all of the course was run, doubt its
// time; notes about other things, and about other days, say nothing.
func TestNotesAgainstTheTime(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Notes = 0, 1, 2, 3
	for note, want := range map[string]Status{
		"pulled out at 2 km": Doubtful, "withdrew injured": Doubtful, "only did one lap": Doubtful, "ran 4 laps instead of 5": Doubtful,
		"guest, not in results": Doubtful, "not to be counted": Doubtful, "took a short cut": Doubtful,
		"abgekürzt": Doubtful, "eine Runde zu wenig": Doubtful, "nicht die ganze Strecke": Doubtful, "zählt nicht": Doubtful, "außer Wertung": Doubtful,
		"verlaufen, abgebrochen": Doubtful, "Name unbekannt": Doubtful, "ikke gennemført": DNF, "kiszállt": DNF, "diskalifiye edildi": DQ, "één ronde": Doubtful, "fel nummerlapp": Doubtful, "gestopt": DNF, "기권": DNF, "退赛": DNF, "לא סיימה": DNF, "لم يكمل": DNF, "bỏ cuộc": DNF, "mengundurkan diri": DNF, "ไม่จบ": DNF, "실격": DQ, "取消资格": DQ, "ถูกตัดสิทธิ์": DQ, "não chegou": DNF,
		"a coupé le parcours": Doubtful, "un tour de moins": Doubtful, "à ne pas compter": Doubtful, "hors classement": Doubtful,
		"atajó": Doubtful, "una vuelta menos": Doubtful, "recorrido incompleto": Doubtful, "no cuenta": Doubtful, "fuera de clasificación": Doubtful,
		"ha tagliato il percorso": Doubtful, "un giro in meno": Doubtful, "non conta": Doubtful, "afgesneden": Doubtful, "telt niet mee": Doubtful,
		"een ronde te weinig": Doubtful, "genade": Doubtful, "räknas ej": Doubtful, "skrócił trasę": Doubtful, "nie liczy się": Doubtful, "nezapočítává se": Doubtful,
		"bitte streichen": Doubtful, "entered twice, see above": Doubtful,
		"stopped after one lap": Doubtful, "please remove": Doubtful, "turned back at halfway": DNF, "ha saltato un giro": Doubtful, "ronde gemist": Doubtful, "tijd klopt niet": Doubtful, "TBC": Doubtful,
		"scanned twice": Doubtful, "same person as 5": Doubtful, "virtual": Doubtful, "remote run": Doubtful, "ran yesterday": Doubtful, "test": Doubtful, "retired at 4km": Doubtful, "ran short": Doubtful,
		"started 5 min early": Doubtful, "time estimated": Doubtful, "Zeit geschätzt": Doubtful,
		"injured, stopped at 2k": Doubtful, "out at lap 2": Doubtful, "retired on lap 2": Doubtful, "course cutting": Doubtful, "course not completed": Doubtful, "missed a marker": Doubtful, "skipped the last lap": Doubtful,
		"joined at lap 2": Doubtful, "joined halfway": Doubtful, "started at 2k": Doubtful, "got a lift": Doubtful, "not a runner": Doubtful, "marshal, not a runner": Doubtful, "result disallowed": Doubtful, "short distance": Doubtful, "went wrong way, ran 4k": Doubtful,
		"joined the club at Easter": OK, "missed the bus": OK, "did not finish last week": OK, "not completed a run this year until now": OK, "joined 5 friends": OK,
		"50 virtual runs done in lockdown": OK, "started with Jo": OK, "late start": OK, "time of her life": OK, "retired postman": OK, "tested new shoes": OK, "same club as Al": OK,
		"PB": OK, "last week did not count": OK, "doesn't count as a PB": OK, "first lap with the kids": OK, "full course this time": OK, "retired teacher": OK, "stopped to help": OK,
		"lovely morning; invalid": Doubtful, "invalid; well done!": Doubtful, "PB; falsche Nummer; danke": Doubtful, "nome desconhecido; lovely morning": Doubtful, "wrong number; not confirmed": Doubtful,
		"wrong number; now corrected": OK, "name unclear; confirmed by Jo": OK, "well done; happy birthday": OK, "tested shoes; first lap with the kids": OK,
		"counted everybody in": OK, "nicht schlecht": OK, "zum ersten Mal die ganze Strecke": OK, "première fois": OK, "pas mal": OK, "short of breath": OK, "new course record": OK, "cut his hair": OK,
		"not her best": OK, "no excuses": OK, "tour guide": OK,
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Jo Lee", "18:20", ""})
			yield([]string{"2", "Al Roe", "19:10", note})
			yield([]string{"3", "Cy Dee", "19:15", ""})
		})
		CheckRun(lines, 5000)
		if lines[1].Status != want {
			t.Errorf("%q: %v, want %v", note, lines[1].Status, want)
		}
	}
}

// A note that not all of the course was run, beside neither time nor place, is of somebody who did not finish.
func TestCutShortWithoutTime(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Notes = 0, 1, 2, 3
	for note, want := range map[string]Status{"only did 1 lap": DNF, "2 laps only": DNF, "did not reach the finish": DNF, "carried off": DNF, "walked off the course": DNF, "DNC": DNF, "timer missed": Untimed} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Jo Lee", "18:20", ""})
			yield([]string{"", "Al Roe", "", note})
			yield([]string{"2", "Cy Dee", "19:15", ""})
		})
		if lines[1].Status != want {
			t.Errorf("%q: %v, want %v", note, lines[1].Status, want)
		}
	}
}
