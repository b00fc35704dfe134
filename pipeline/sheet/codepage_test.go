package sheet

import (
	"testing"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// Short sheets of invented people, each written in the code page that the
// programs of its country write, come back letter by letter. The last ones are
// of Windows-1252 although a byte or two would fit elsewhere.
func TestCodePages(t *testing.T) {
	for _, c := range []struct {
		enc  encoding.Encoding
		name string
		text string
	}{
		{charmap.Windows1250, "Windows-1250", "Miejsce;Nazwisko i imię;Czas\n1;Żółkiewicz Paweł;21:30\n2;Dąbrówko Łucja;22:10\n"},
		{charmap.Windows1250, "Windows-1250", "Poř.;Jméno;Čas\n1;Dvořáčkův Zdeněk;21:30\n2;Křížala Šárka;22:10\n"},
		{charmap.Windows1250, "Windows-1250", "Helyezés;Név;Idő\n1;Kőszegi Ágnes;21:30\n2;Szűcs Gergő;22:10\n"},
		{charmap.Windows1250, "Windows-1250", "Mesto;Ime;Priimek;Čas\n1;Špela;Črnilogar;21:30\n2;Matjaž;Škafar;22:10\n"},
		{charmap.ISO8859_2, "ISO 8859-2", "Miejsce;Nazwisko;Czas\n1;Śliwa Żaneta;21:30\n2;Mączko Paweł;22:10\n"},
		{charmap.Windows1251, "Windows-1251", "Место;Фамилия;Время\n1;Берёзкин;21:30\n2;Щукарев;22:10\n"},
		{charmap.KOI8R, "KOI8-R", "Место;Фамилия;Время\n1;Березкин;21:30\n2;Щукарев;22:10\n"},
		{charmap.CodePage866, "code page 866", "Место;Фамилия;Время\n1;Березкин;21:30\n2;Щукарев;22:10\n"},
		{charmap.Windows1253, "Windows-1253", "Θέση;Επώνυμο;Χρόνος\n1;Λιβαδάρης;21:30\n2;Άννινος;22:10\n"},
		{charmap.Windows1254, "Windows-1254", "Sıra;Ad;Soyad;Süre\n1;Işıl;Çamlıdağ;21:30\n2;Yiğit;Şenkaya;22:10\n"},
		{charmap.Windows1257, "Windows-1257", "Vieta;Vārds;Laiks\n1;Jānis Bērzkalns;21:30\n2;Līga Ķezbere;22:10\n"},
		{charmap.Windows1257, "Windows-1257", "Vieta;Pavardė;Laikas\n1;Ąžuolaitis;21:30\n2;Žvirblienė;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Mænd|||||Kvinder\nPlads|Løber|Forening|Sluttid||Plads|Løber|Forening|Sluttid\n1|Giosuè Roligrà-Ellò|Vale|20:56||1|Aneta Zaj|Mill|24:06\n2|Lee Bran|Läufertreff Mühlgrund|21:47||2|Alex Bran|Mill|26:52\n3|Iván Peñal|Fell|28:36||3|Rita Conceiçães|Fell|28:20\n4|Inácio Falcão|Les Foulées d'Ormay|31:07||4|Sabine Weißkow||36:12\n"},
		{japanese.ShiftJIS, "Shift JIS", "会場,柳池公園\n順位,氏名,性別,タイム\n1,井上 桜,女,21:30\n2,松本 誠,男,22:10\n"},
		{japanese.EUCJP, "EUC-JP", "順位,氏名,タイム\n1,井上 桜,21:30\n2,松本 誠,22:10\n"},
		{simplifiedchinese.GB18030, "GB 18030", "名次,姓名,性别,成绩\n1,王小明,男,21:30\n2,李红,女,22:10\n"},
		{traditionalchinese.Big5, "Big5", "名次,姓名,性別,成績\n1,王小明,男,21:30\n2,李紅,女,22:10\n"},
		{korean.EUCKR, "EUC-KR", "순위,이름,성별,기록\n1,김민수,남,21:30\n2,이영희,여,22:10\n"},
		{charmap.Macintosh, "Mac Roman", "Clt;Nom;Temps\n1;Hélène Thévenard;21:30\n2;Loïc Lefèbvre;22:10\n"},
		{charmap.CodePage850, "code page 850", "Platz;Name;Zeit\n1;Jörg Müller;21:30\n2;Änne Größler;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Platz;Name;Zeit\n1;Jörg Müller;21:30\n2;Änne Größler;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Clt;Nom;Temps\n1;Hélène Thévenard;21:30\n2;Loïc Lefèbvre-Çélas;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Plac.;Navn;Tid\n1;Søren Kjærgård;21:30\n2;Åse Ørskov;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Pos,Name,Time\n1,Sean O’Brien,21:30\n2,Mary D’Arcy,22:10\n3,Una O’Dea – guest,23:00\n"},
		{charmap.Windows1252, "Windows-1252", "Sæti;Nafn;Tími\n1;Þórður Ægisson;21:30\n2;Guðrún Ýrr;22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Pos,Name,Time\n1,José Nunez,21:30\n2,Tom Reed,22:10\n"},
		{charmap.Windows1252, "Windows-1252", "Plaats;Naam;Tijd\n1;Loïc le Goff;21:30\n2;Sónia Sá;22:10\n3;Bjørn Díez;22:20\n4;Nicolò Serra;22:30\n5;Cédric Léa;22:40\n6;Køre Íñigo;22:50\n7;Gøril Dúñez;22:55\n"},
		{charmap.Windows1252, "Windows-1252", "Class.;Nome;Tempo\n1;João Simões;21:30\n2;Conceição Magalhães;22:10\n"},
	} {
		data, err := c.enc.NewEncoder().String(c.text)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		text, name, _, err := decode([]byte(data))
		if err != nil || name != c.name || string(text) != c.text {
			t.Errorf("%s: read as %s: %q (%v)", c.name, name, text, err)
		}
		back, err := encodeAs(text, name)
		if err != nil || string(back) != data {
			t.Errorf("%s: written back as %q, want %q (%v)", c.name, back, data, err)
		}
	}
}

// Text as a mail program sends it (RFC 2045, section 6.7), in one byte a letter
// or in UTF-8; an equals sign elsewhere is one.
func TestQuotedPrintable(t *testing.T) {
	for _, c := range []struct{ data, want, encoding string }{
		{"Platz;Name\n1;J=F6rg M=FCller\n2;K=E4the Gr=F6=DFler\n", "Platz;Name\n1;Jörg Müller\n2;Käthe Größler\n", "quoted-printable"},
		{"Platz;Name\n1;J=C3=B6rg M=C3=BCller\n", "Platz;Name\n1;Jörg Müller\n", "quoted-printable"},
		{"Pos,Name,Time\n=1,Jo Lee,18:20\n=1,Al Roe,18:20\n", "Pos,Name,Time\n=1,Jo Lee,18:20\n=1,Al Roe,18:20\n", "UTF-8"},
	} {
		text, encoding, _, err := decode([]byte(c.data))
		if err != nil || string(text) != c.want || encoding != c.encoding {
			t.Errorf("%q: %q in %s (%v)", c.data, text, encoding, err)
		}
	}
}

// A text of another code page that was taken for Windows-1252 on its way into
// UTF-8 comes back letter by letter where its words hold signs, or no ASCII
// letter; text that reads well as it is stays as it is.
func TestTakenForWindows1252(t *testing.T) {
	for _, c := range []struct {
		enc  encoding.Encoding
		text string
	}{
		{charmap.Windows1250, "Miejsce;Nazwisko i imię;Czas\n1;Żółkiewicz Paweł;21:30\n2;Dąbrówko Łucja;22:10\n3;Śliwa Bożena;22:20\n"},
		{charmap.Windows1250, "Poř.;Jméno;Čas\n1;Bartoš Luboš;21:30\n2;Kaďourek Zdeněk;22:10\n3;Maľa Ľuboš;22:20\n4;Štrbáková Miľa;22:25\n"},
		{charmap.ISO8859_2, "Miejsce;Nazwisko;Czas\n1;Śliwa Żaneta;21:30\n2;Mączko Paweł;22:10\n3;Wąsik Łucja;22:20\n"},
		{charmap.Windows1251, "Место;Фамилия;Время\n1;Берёзкин;21:30\n2;Щукарев;22:10\n"},
	} {
		data, err := c.enc.NewEncoder().String(c.text)
		if err != nil {
			t.Fatal(err)
		}
		taken := string(codePages[0].append(nil, []byte(data)))
		text, _, note, err := decode([]byte(taken))
		if err != nil || string(text) != c.text || note == "" {
			t.Errorf("%q comes back as %q (%v)", taken, text, err)
		}
	}
	for _, text := range []string{
		"Pos,Name,Time\n1,José O´Brien,21:30\n2,Ana Peña,22:10\n3,Una O´Dea,23:00\n4,Mª José Gil,23:10\n5,Núria Gal·la,23:20\n",
		"Plac.;Navn;Tid\n1;Søren Kjærgård;21:30\n2;Åse Ørskov;22:10\n",
		"Pos,Name,Time\n1,JÃ¶rg MÃ¼ller,21:30\n2,KÃ¤the GrÃ¶Ãler,22:10\n3,Ana PeÃ±a,23:00\n",
		"Clt;Nom;Temps\n1;Hélène Thévenard;21:30\n2;Loïc Lefèbvre-Çélas;22:10\n3;Zoë Œuvrard;22:20\n",
		"Miejsce;Nazwisko;Czas\n1;Śliwa Żaneta;21:30\n2;Mączko Paweł;22:10\n",
		"Sæti;Nafn;Tími\n1;Þórður Ægisson;21:30\n2;Guðrún Ýrr;22:10\n",
		"Pos¦Name¦Sex¦Age¦Time\n1¦Moira Tonlund¦F¦12¦0:17:00\n2¦Brendan Skeld¦M¦41¦0:18:58\n3¦Paula Quarm¦F¦43¦0:19:41\n",
		"Pos,Name,Time\n1,Moira Tonlund¹,17:00\n2,Brendan Skeld³,18:58\n3,Paula Quarm¹,19:41\n4,Thea Hollis¹,20:06\n5,Jo Lee³,20:10\n¹ first time\n³ guest\n",
	} {
		if got, _, _, err := decode([]byte(text)); err != nil || string(got) != text {
			t.Errorf("%q comes back as %q (%v)", text, got, err)
		}
	}
}
