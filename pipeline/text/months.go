package text

import "strings"

// monthNames are the wide and abbreviated month names, in the formatting and
// the stand-alone form, of Unicode CLDR (Unicode Common Locale Data Repository,
// locales en, fr, de, es, it, nl, pt, pl, sv, da, nb, cs, sk, hu, fi, ro, ca, tr, ru, uk,
// bg, sr, el, et, lv, lt, sl, hr, is, cy, ga, af, gl, eu, sq, mk, mt, lb, be, ar, he, id, sw, th; typed from memory, checked
// in a test, the first eleven against the localised month names of the spreadsheet library), with
// everyday variants: the French month names of the Maghreb, the Syriac ones of the Levant where they are one word,
// and Hebrew ones with the letter for "in" before them. Two words are left out or kept for one language because they
// mean different months: listopad is November in Polish and October in Croatian
// (see Listopad), julie is a given name before it is a month.
var monthNames = [12]string{
	"january jan leden ledna januára január tammikuu tammikuuta tammi tammik ianuarie gener ocak janvier janv januar jänner jaenner jän januari jan. enero ene gennaio gen janeiro styczeń stycznia sty januar. " +
		"января январь янв січня січень януари јануар ιανουαρίου ιανουάριος ιαν jaanuar janvāris janvārī sausio sausis januarja siječnja siječanj janúar ionawr eanáir januarie xaneiro urtarrila urtarrilaren urtarrilak janari janar јануари jannar студзеня студзень januara јануара " +
		"يناير جانفي ינואר בינואר มกราคม",
	"february feb únor února február februára helmikuu helmikuuta helmi helmik februarie febrer şubat febr février févr fév fevr februar feber februari febrero febbraio fevereiro fev luty lutego lut " +
		"февраля февраль фев лютого лютий февруари фебруар φεβρουαρίου φεβρουάριος φεβ veebruar februāris februārī vasario vasaris februarja veljače veljača febrúar chwefror feabhra febreiro otsaila otsailaren otsailak shkurt frar лютага люты februara фебруара " +
		"فبراير فيفري شباط פברואר בפברואר กุมภาพันธ์",
	"march mar březen března marec márc március maaliskuu maaliskuuta maalis maalisk martie març mart mars märz maerz mär mrz maart mrt marzo março marzec marca marts " +
		"марта март мар березня березень μαρτίου μάρτιος μαρ märts kovo kovas marec ožujka ožujak mawrth márta martxoa martxoaren martxoak mäerz marzu сакавіка сакавік " +
		"مارس آذار מרץ במרץ מרס במרס maret machi มีนาคม",
	"april apr duben dubna apríl apríla április huhtikuu huhtikuuta huhti huhtik aprilie nisan avril avr abril abr aprile kwiecień kwietnia kwi " +
		"апреля апрель апр квітня квітень април απριλίου απρίλιος απρ aprill aprīlis aprīlī balandžio balandis aprila travnja travanj ebrill aibreán apirila apirilaren apirilak prill abrëll красавіка красавік априла " +
		"أبريل إبريل ابريل أفريل نيسان אפריל באפריל aprili เมษายน",
	"may mai květen května máj mája május toukokuu toukokuuta touko toukok maig mayıs maj mei mayo maggio mag maio maja " +
		"мая май травня травень мај μαΐου μάιος μαι maijs maijā gegužės gegužė svibnja svibanj maí bealtaine maiatza maiatzaren maiatzak mejju маја " +
		"مايو أيار מאי במאי พฤษภาคม",
	"june jun červen června jún júna június kesäkuu kesäkuuta kesä kesäk iunie juny haziran juin juni junio giugno giu junho czerwiec czerwca cze juno " +
		"июня июнь июн червня червень юни јун ιουνίου ιούνιος ιουν juuni jūnijs jūnijā birželio birželis junija lipnja lipanj junij júní mehefin meitheamh junie xuño ekaina ekainaren ekainak qershor ġunju чэрвеня чэрвень јуни јуна juna " +
		"يونيو يونيه جوان حزيران יוני ביוני มิถุนายน",
	"july jul červenec července júl júla július heinäkuu heinäkuuta heinä heinäk iulie juliol temmuz juillet juil juli julio luglio lug julho lipiec lipca lip " +
		"июля июль июл липня липень юли јул ιουλίου ιούλιος ιουλ juuli jūlijs jūlijā liepos liepa julija srpnja srpanj julij júlí gorffennaf iúil xullo uztaila uztailaren uztailak korrik lulju ліпеня ліпень јули јула jula " +
		"يوليو يوليه جويلية تموز יולי ביולי julai กรกฎาคม",
	"august aug srpen srpna augusta augusztus elokuu elokuuta elo elok agost ağustos août aout aoû aou augustus agosto ago augusti sierpień sierpnia sie " +
		"августа август авг серпня серпень αυγούστου αύγουστος αυγ augusts augustā rugpjūčio rugpjūtis avgusta avgust kolovoza kolovoz ágúst awst lúnasa abuztua abuztuaren abuztuak gusht awwissu жніўня жнівень " +
		"أغسطس غشت أوت آب אוגוסט באוגוסט agustus ogos agosti สิงหาคม",
	"september sep září septembra szeptember syyskuu syyskuuta syys syysk septembrie eylül sept septembre septiembre settembre set setembro wrzesień września wrz setiembre " +
		"сентября сентябрь сен сент вересня вересень септември септембар σεπτεμβρίου σεπτέμβριος σεπ σεπτ septembris septembrī rugsėjo rugsėjis septembar rujna rujan medi setembre iraila irailaren irailak shtator settembru верасня верасень септембра " +
		"سبتمبر شتنبر أيلول ספטמבר בספטמבר septemba กันยายน",
	"october oct říjen října októbra október lokakuu lokakuuta loka lokak octombrie ekim octobre oktober okt octubre ottobre ott outubro out październik października paź " +
		"октября октябрь окт жовтня жовтень октомври октобар οκτωβρίου οκτώβριος οκτ oktoober oktobris oktobrī spalio spalis oktobra oktobar hydref urria urriaren urriak tetor ottubru кастрычніка кастрычнік октобра " +
		"أكتوبر اكتوبر אוקטובר באוקטובר oktoba ตุลาคม",
	"november nov listopadu novembra marraskuu marraskuuta marras marrask noiembrie novembre kasım novembre noviembre novembro listopad listopada lis " +
		"ноября ноябрь ноя листопада листопад ноември новембар νοεμβρίου νοέμβριος νοε novembris novembrī lapkričio lapkritis novembar studenoga studenog studeni nóvember tachwedd samhain azaroa azaroaren azaroak nëntor novembru лістапада лістапад новембра " +
		"نوفمبر نونبر נובמבר בנובמבר novemba พฤศจิกายน",
	"december dec prosinec prosince decembra joulukuu joulukuuta joulu jouluk decembrie desembre aralık décembre déc dezember dez diciembre dic dicembre dezembro grudzień grudnia gru desember des " +
		"декабря декабрь дек грудня грудень декември децембар δεκεμβρίου δεκέμβριος δεκ detsember decembris decembrī gruodžio gruodis decembar prosinca prosinac rhagfyr nollaig decembro abendua abenduaren abenduak dhjetor diċembru снежня снежань декембра " +
		"ديسمبر دجنبر דצמבר בדצמבר desemba disember ธันวาคม",
}

// Months gives the number of the month, from 1, of every month name as fold
// writes it.
func Months(fold func(string) string) map[string]int {
	out := map[string]int{}
	for i, names := range monthNames {
		for _, n := range strings.Fields(names) {
			out[fold(n)] = i + 1
		}
	}
	return out
}

// Listopad says whether a folded word is listopad, November in Polish and October
// in Croatian: whoever reads it needs more to tell.
func Listopad(folded string) bool { return folded == "listopad" || folded == "listopada" }
