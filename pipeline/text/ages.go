package text

// AgeUnits may follow an age, 41 yrs, 41 ans, and BornWords stand beside a year of birth, born 1984, Jg. 1984:
// folded, divided by "|". Common practice, no source.
const (
	AgeUnits  = `year-old|year-olds|year olds|-year-old|-year-olds|y|yr|yrs|yo|y.o|y/o|year|years|years old|year old|jahre|j|j.|ans|an|anos|anni|jaar|lat|lata|ar|aar|vuotta|let|rokov|rokow|roku|god|godina|godine|leta|jr|jarig|jahre alt|jaar oud|ar gammal|ar gammel|vuotias|aastat|aastane|eves|ani|de ani|metai|metu|gadi|gadu|yas|yasinda|oed|anys|urte|лет|года|год|л|р|років|роки|години|година|ετων`
	BornWords = `jg|jahrgang|geb|geboren|born|rocnik|roc|rocznik|ur|urodzony|urodzona|nar|narozen|narozena|letnik|godiste|roj|rojen|rojena|rod|roden|rodena|ne|nee|nacido|nacida|nascido|nascida|nato|nata|fodd|fodt|synt|syntynyt|szul|szuletett|nascut|nascuta|ganwyd|dz|dzim|dzimis|gim|gimes|sund|sundinud|dogum|dog|р|род|роден|родена|год рождения|г.р|γεν|yob|dob`
)
