package sheet

// Heading words of more languages: Russian, Ukrainian, Bulgarian, Serbian,
// Greek, Turkish, Estonian, Latvian, Lithuanian, Slovenian, Croatian, Slovak,
// Czech, Hungarian, Romanian, Finnish, Icelandic, Welsh, Irish, Catalan and
// Afrikaans, in the folded form (no accents: й is и). The lists are common
// practice on result sheets, no source.
var languageWords = map[concept]string{
	cPlace:          `место позиция мјесто пласман място класиране місце позиція θεση καταταξη σειρα sira siralama koht vieta mesto uvrstitev mjesto poredak plasman miesto por poradi umistenie loc locul pozitie pozitia saeti rod safle ait lloc posisie plek`,
	cTime:           `время результат час резултат време χρονος επιδοση τερματισμος sure suresi zaman derece aeg lopuaeg laiks laikas rezultats rezultatas rezultat rezultati vrijeme vreme celido timp timpul tulos loppuaika timi lokatimi amser tyd rezultatai`,
	cTime | cChip:   `чистое чистий чисте нетто nettoaeg nettoaika nettoido flogutimi`,
	cTime | cGun:    `брутто bruttoaeg bruttoaika bruttoido byssutimi`,
	cName:           `фио имена ονοματεπωνυμο isim adsoyad nume nafn enw ainm naam`,
	cRunner:         `участник участница спортсмен спортсменка бегун учасник учасниця атлет състезател такмичар αθλητης δρομεας συμμετεχων sporcu kosucu yarismaci osaleja jooksja dalibnieks dalybis dalyvis begikas tekac tekmovalec natjecatelj trkac zavodnik bezec pretekar futo versenyzo sportiv alergator juoksija osallistuja keppandi hlaupari rhedwr corredor`,
	cName | cGiven:  `имя імя име ονομα adi eesnimi vards vardas ime prenume keresztnev utonev eiginnafn fornafn cyntaf`,
	cName | cFamily: `фамилия прізвище презиме επωνυμο επιθετο soyad soyadi soyisim perekonnanimi perenimi uzvards pavarde priimek prezime csaladnev eftirnafn kenninafn cyfenw sloinne cognoms`,
	cAge:            `возраст вік възраст узраст ηλικια yas yasi vanus vecums vecuma amzius amziaus starost vek eletkor kor varsta ika aldur oed oedran aois edat ouderdom возрастная вікова`,
	cBirth:          `рождения рожд раждане рођења рођ рождение народження народж нар γεννησης γεν dogum sund dzimsanas dz gim gimimo roj rojstva rod rodenja narodenia narozeni narodeni szul szuletesi szuletett nastere nasterii synt faeddur geni naixement`,
	cBirth | cYear:  `гр годиште sunniaasta letnik godiste rocnik syntvuosi faedingarar`,
	cYear:           `год рік година години ετος yili yil gads metai god ev anul vuosi blwyddyn`,
	cDate:           `дата датум ημερομηνια tarih kuupaev datums datum pvm paivays dagsetning dyddiad`,
	cGroup:          `группа категория категорија класа група категорія κατηγορια grubu vanuseklass vanusegrupp grupa grupe kategorija kategorie ikasarja sarja flokkur aldursflokkur grwp categori`,
	cSex:            `пол стать φυλο cinsiyet cins sugu dzimums lytis spol nem neme sp pohl kyn rhyw inscne gneas geslag`,
	cClub:           `клуб команда отбор συλλογος ομαδα σωματειο kulup kulubu takim klubi klubs klubas drustvo oddiel klubb felag hlaupahopur clwb seura jooksuklubi`,
	cNumber:         `номер αριθμος gogus numara numarasi rinnanumber numurs numeris stevilka broj numer rasnumer rasnr rhif kilpailunro nommer`,
	cNo:             `νο nro`,
	cCourse:         `трасса маршрут траса стаза διαδρομη τοποθεσια parkur pist rada trase trasa proga staza palya helyszin traseu locatie locatia lokacija reitti leid hlaupaleid cwrs lleoliad`,
	cOfDay:          `город місто град πολη sehir yer kraj grad paikka paikkakunta stadur linn pilseta miestas oras varos`,
	cDistance:       `дистанция дистанція разстояние αποσταση mesafe distants distancija razdalja tav distanta matka vegalengd pellter`,
	cStatus:         `статус κατασταση durum staatus statuss statusas allapot stare tila stada`,
	cNote:           `примечание примечания прим примітки примітка забележка напомена παρατηρησεις σχολια aciklama aciklamalar notlar markused piezimes pastabos opombe napomena primjedba primjedbe poznamka poznamky pozn megjegyzes observatii huom huomautus huomautukset athugasemdir athugasemd nodiadau sylwadau opmerkings`,
	cGap:            `отставание відставання διαφορα fark vahe starpiba atsilikimas zaostanek zaostatak kulonbseg hatrany diferenta ero munur`,
	cPace:           `темп скорость швидкість ρυθμος hiz kiirus ritem tempas vauhti hradi`,
	cTotal:          `всего усього συνολο toplam kokku kopa viso skupaj ukupno spolu celkem osszesen osszes yhteensa samtals cyfanswm`,
	cPoints:         `очки бали точки βαθμοι puan punktid punkti taskai tocke bodovi body pont pontok puncte pisteet stig pwyntiau`,
	cRun:            `забег забіг бягане αγωνας kosu yaris jooks skrejiens begimas tek utrka beh futas verseny cursa alergare juoksu hlaup ras`,
	cUnit:           `и та ja ir un in si ve i es`,
	cOther:          `страна країна χωρα ulke riik valsts salis drzava orszag tara maa`,
}

// languagePhrases are whole headings of those languages whose meaning is not the
// sum of their words.
var languagePhrases = map[string]Meaning{
	"р н": BirthYear, "r nar": BirthYear, "s v": BirthYear, "rocz": BirthYear, "age next birthday": Age, "age at next birthday": Age, "age last birthday": Age, "datum nar": BirthDate, "dat nar": BirthDate, "faedingardagur": BirthDate, "fdag": BirthDate, "kt": Other, "god rod": BirthYear, "године": Age, "држава": Other, "ст број": Number, "учесник": Name,
	"м": Position, "г р": BirthYear, "г рожд": BirthYear, "год рожд": BirthYear, "год р": BirthYear, "дата рождения": BirthDate, "дата рожд": BirthDate, "дата народження": BirthDate,
	"место проведения": Course, "місце проведення": Course, "ст no": Number, "старт no": Number, "стартовыи номер": Number, "стартовии номер": Number, "нагр no": Number, "время старта": Session,
	"место в группе": GroupPlace, "место в категории": GroupPlace, "місце в групі": GroupPlace, "м / ж": Sex, "ч / ж": Sex, "α / γ": Sex,
	"ετος γεννησης": BirthYear, "ετος γεν": BirthYear, "ημερομηνια γεννησης": BirthDate, "ημ γεννησης": BirthDate,
	"dogum tarihi": BirthDate, "gogus no": Number, "ad": GivenName, "isim soyisim": Name, "adi soyadi": Name, "e / k": Sex, "k / e": Sex, "yas grubu": AgeGroup,
	"m / n": Sex, "sunniaeg": BirthDate, "n / m": Sex, "v / s": Sex, "v / m": Sex, "m / z": Sex, "z / m": Sex, "f / n": Sex, "n / f": Sex,
	"norises vieta": Course, "begimo vieta": Course, "varzybu vieta": Course, "mesto konani": Course, "misto konani": Course, "miesto konania": Course, "kraj prireditve": Course, "mjesto odrzavanja": Course, "a futas helye": Course, "loc de desfasurare": Course,
	"dz gads": BirthYear, "dz datums": BirthDate, "gim metai": BirthYear, "gim data": BirthDate, "god rodenja": BirthYear, "leto roj": BirthYear, "leto rojstva": BirthYear, "datum rodenja": BirthDate, "datum rojstva": BirthDate,
	"st st": Number, "startna st": Number, "st stevilka": Number, "startna stevilka": Number, "start broj": Number, "st broj": Number, "startni broj": Number, "br": Number, "start c": Number, "start cislo": Number, "startove cislo": Number, "st cislo": Number, "st c": Number,
	"szul ev": BirthYear, "szuletesi ev": BirthYear, "szuletett": BirthYear, "szul": BirthYear, "szul datum": BirthDate, "szuletesi datum": BirthDate,
	"an nastere": BirthYear, "anul nasterii": BirthYear, "data nasterii": BirthDate, "nr concurs": Number, "nume si prenume": Name, "nume prenume": Name, "nume complet": Name,
	"synt": BirthYear, "synt vuosi": BirthYear, "synt v": BirthYear, "f ar": BirthYear, "faed ar": BirthYear,
	"enw cyntaf": GivenName, "enw cyntaf / first name": GivenName, "blwyddyn geni": BirthYear, "dyddiad geni": BirthDate,
	"o all": Position, "oall": Position, "piazz": Position, "plts": Position, "m ce": Position, "m sce": Position, "classif": Position, "dos": Number, "dors": Number, "nummerlapp": Number, "cislo": Number,
	"rn": BirthYear, "esc": AgeGroup, "eredmeny": Time, "back": Gap, "atraso": Gap, "vit": Pace, "vit km / h": Pace, "vit km h": Pace, "km / u": Pace, "km / t": Pace, "perc / km": Pace, "megj": Notes,
	"m ce kat": GroupPlace, "m ce w kat": GroupPlace, "pos esc": GroupPlace, "class esc": GroupPlace, "klasseplac": GroupPlace, "sarjasija": GroupPlace, "plaats m / v": SexPlace, "m ce plec": SexPlace, "m ce k / m": SexPlace, "sukup sija": SexPlace,
	"ime i prezime": Name, "ime in priimek": Name, "prezime i ime": Name, "priimek in ime": Name, "nom i cognoms": Name, "any naix": BirthYear,
}
