package sheet

import "strings"

// semiticHeadings are headings of Hebrew and Arabic lists, known as a whole or not at all.
// Common practice on result sheets, no source.
var semiticHeadings = map[Meaning]string{
	Position:   "מקום|מיקום|דירוג|מקום כללי|المركز|الترتيب|المركز العام|الترتيب العام",
	Number:     "מספר|מספר חזה|מס חזה|מס' חזה|חזה|الرقم|رقم المتسابق|رقم الصدر|رقم العداء",
	Name:       "שם|שם מלא|שם הרץ|שם המשתתף|الاسم|الاسم الكامل|اسم المتسابق|اسم العداء|المتسابق|العداء",
	GivenName:  "שם פרטי|الاسم الأول|الاسم الاول|الاسم الشخصي",
	FamilyName: "שם משפחה|اسم العائلة|اللقب|الاسم العائلي|الكنية",
	Time:       "זמן|תוצאה|זמן כולל|זמן סופי|الزمن|الوقت|التوقيت|زمن السباق",
	ChipTime:   "זמן נטו|الزمن الصافي",
	GunTime:    "זמן ברוטו|זמן רשמי|الزمن الرسمي",
	Sex:        "מין|מגדר|ז/נ|الجنس|النوع",
	Age:        "גיל|العمر|السن",
	BirthYear:  "שנת לידה|سنة الميلاد|سنة الولادة|عام الميلاد",
	BirthDate:  "תאריך לידה|ת. לידה|تاريخ الميلاد|تاريخ الولادة",
	AgeGroup:   "קטגוריה|קבוצת גיל|קטגוריית גיל|מקצה|الفئة|الفئة العمرية|المجموعة العمرية",
	Club:       "מועדון|קבוצה|אגודה|النادي|الفريق",
	Date:       "תאריך|التاريخ",
	Distance:   "מרחק|المسافة",
	Notes:      "הערות|הערה|ملاحظات|ملاحظة",
	Status:     "מצב|סטטוס|الحالة",
	SexPlace:   "מקום במין|מקום במגדר|الترتيب حسب الجنس|المركز حسب الجنس",
	GroupPlace: "מקום בקטגוריה|מקום בקבוצה|מקום בקבוצת גיל|المركز في الفئة|الترتيب في الفئة",
	Pace:       "קצב|الوتيرة|السرعة",
	Gap:        "פער|הפרש|الفارق",
	Other:      "מדינה|עיר|ארץ|البلد|الدولة|الجنسية|المدينة",
}

// withSemitic adds those headings in their folded form.
func withSemitic(phrases map[string]Meaning) map[string]Meaning {
	for m, words := range semiticHeadings {
		for _, w := range strings.Split(words, "|") {
			phrases[fold(w)] = m
		}
	}
	return phrases
}

// semiticSexes are the sexes of such lists, and of those in Persian.
var semiticSexes = strings.FieldsFunc(fold("זכר|נקבה|ذ|أ|ז|נ|גבר|אישה|אשה|גברים|נשים|ذكر|أنثى|انثى|رجل|امرأة|رجال|نساء|سيدات|سيدة|مرد|زن|مردان|زنان|آقا|خانم|آقایان|بانوان"), func(r rune) bool { return r == ' ' || r == '|' || r == '/' })
