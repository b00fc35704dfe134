package text

// Ways in which lists say how somebody's race ended, each a whole remark, divided by bars, in
// lower case with the letters of their languages or without their marks (common practice in
// some forty languages, no source). Readers fold them in their own way. Over the time limit is
// no official finish and goes with did not finish.
const (
	DidNotFinish = `d n f|unfinished|didn't make it to the finish|didn't reach the finish|didnt make it to the finish|out injured|not completed|not complete|uncompleted|wd|ikke gennemfort|ikke fullfort|fullforte inte|fullforde inte|har brutit|ej i mal|inte i mal|ikke i mal|nije u cilju|kiszallt|kiszallt.|yarisi birakti|birakti|yaristan ayrildi|yaris disi kaldi|bitiremeyenler|yarisi birakanlar|nedokoncili|nie ukonczyli|feladtak|keskeyttaneet|retirements|retirees|no acabo|gestopt|udg|udg.|utg|utg.|uitv|uitv.|uitgev|uitgev.|ausgesch|ausgesch.|abn|abn.|nedok|nedok.|opg|opg.|desist|desist.|dnf injury|dnf injured|
	dnc|d.n.c|did not reach the finish|did not make it to the finish|walked off|walked off the course|carried off|did not get to the finish|non finisher|non-finisher|non finishers|non-finishers|rtd|retd|ret'd|no finish|taken ill|time limit exceeded|failed to finish|never finished|a abandonne|ei maalissa|w/d|wdn|abandons|ritirati|retirados|abandonos|outside the time limit|outside time limit|no result|no results|dnf|d.n.f|did not finish|not finished|retired|ret|abandoned|withdrew|withdrawn|pulled out|dropped out|incomplete|otl|otc|over time limit|over the time limit|
	outside time limit|time limit|hors delai|zeitlimit|abandon|abandonne|abd|abd.|aband|aband.|ab.|non termine|aufgegeben|aufgabe|aufg|aufg.|ausg|ausg.|ausgestiegen|nicht im ziel|nicht beendet|n.i.z|niz|
	dnf.|abandono|abandona|no termino|retirado|retirada|ritirato|ritirata|rit|rit.|non arrivato|uitgevallen|opgegeven|niet gefinisht|desistiu|desistencia|nao terminou|
	nie ukonczyl|nie ukonczyla|zszedl z trasy|zeszla z trasy|zszedl|zeszla|brot|brutt|utgatt|udgaet|fullforte ikke|gennemforte ikke|nedokoncil|nedokoncila|vzdal|vzdala|
	odstoupil|odstoupila|odstupil|odstupila|feladta|nem ert celba|keskeytti|keskeyttanyt|kesk|kesk.|odstopil|odstopila|odustao|odustala|nije zavrsio|nije zavrsila|bitiremedi|
	yaristan cekildi|terk|katkestas|izstajas|nefinisēja|nefiniseja|nebaige|haetti|haetti keppni|lauk ekki keppni|heb orffen|tynnu n ol|abandonat|a abandonat|nu a terminat|
	сошел|сошла|сошел с дистанции|сошла с дистанции|не финишировал|не финишировала|не закончил|зиишов|зіишов|зіишла|не фінішував|не фінішувала|не завършил|не завърши|одустао|
	εγκατελειψε|εγκατελειψη|δεν τερματισε|dropped|did not complete|did not complete the course|did not complete course|did not complete all laps|did not finish the course|
	did not finish course|didn't finish|didn't complete|didnt finish|dnf - did not finish|non fini|non classe abandon|bitirmedi|tamamlamadi|fullfoljde ej|fullfoljde inte|
	brutit|udgik|fullforer ikke|nie dobiegl|nie dobiegla|não terminou|no finalizo|abandonou|ukoncil predcasne|nie dokonczyl|nie dokonczyla|сход|снялся|снялась|途中棄権|棄権|
	izstajies|izstajusies|turned back|turned back at halfway|turned round|stopped after|stopped at|stopped early|left the course|collapsed|umgedreht|demi-tour|ni orffennodd|ni gorffennodd|отказал се|отказала се|не завършила|abbandono|abbandonato|abbandonata|abbandona|abandonament|es va retirar|no ha acabat|no acaba|retras|retrasa|pasitrauke|nefinisavo|utgick|avbrot|zieisla|зійшов|зійшла|зішов|
	retired hurt|retired injured|abgebrochen|abbruch|stopped|uitgestapt|gave up|pulled up|went home|went home at half way|went home at halfway|went home after one lap|went home early|lopetamata|nebeidza|
	ab|non arrive|non arrivee|pas arrive|ausgeschieden|opgave|기권|중도 기권|중도기권|완주 실패|완주실패|未完赛|未完賽|未完成|退赛|退賽|弃权|棄權|ไม่จบ|ไม่จบการแข่งขัน|ถอนตัว|لم يكمل|لم تكمل|لم ينه|لم تنه|انسحب|انسحبت|לא סיים|לא סיימה|פרש|פרשה|bỏ cuộc|không hoàn thành|không về đích|tidak finis|tidak finish|tidak selesai|tidak menyelesaikan|mengundurkan diri|hakumaliza|nedobehl|nedobehla|wycofal sie|リタイア|未完走|途中リタイア|中途退赛|중도 포기|중도포기|미완주|포기|wycofała się|wycofał się|wycofala sie|nie dotarl|nie dotarla|no llego|não chegou|nao chegou`

	Disqualified = `d s q|d q|disqualifications|kiz|kiz.|excl|excl.|diskalifiye edildi|diskalifiye olanlar|diskalifiye edilenler|squalificati|descalificados|desclassificados|zdyskwalifikowani|diskvalificerade|diskvalifikovani|diskvalificirani|diskvalifikuoti|diskvalificeti|дисквалифицированы|дисквалифицированные|дискваліфіковані|дисквалификовани|disqualifizierte|disqualifies|dq|dsq|d.q|d.s.q|disq|disq.|disqualified|disqualification|excluded|struck off|ausgeschlossen|exclu|exclue|escluso|esclusa|excluido|excluida|disqualifie|disqualifiee|disqu|disqualifiziert|descalificado|descalificada|desc|squalificato|squalificata|squal|
	sq|sq.|squalif|squalif.|gediskwalificeerd|diskwalificatie|desclassificado|desclassificada|zdyskwalifikowany|zdyskwalifikowana|dyskwalifikacja|dysk|dysk.|diskvalificerad|
	diskvalifisert|diskvalificeret|diskad|diskvalifikovan|diskvalifikovana|diskvalifikovany|diskvalifikace|kizarva|kizart|kizartak|kizaras|diszkvalifikalva|hylatty|hyl|hyl.|
	diskvalificiran|diskvalificirana|diskvalifikacija|diskalifiye|diskvalifitseeritud|diskval|diskvalificets|diskvalificeta|diskvalifikuotas|diskvalifikuota|ogilt|
	descalificat|descalificata|дисквалификация|дисквалифицирован|дисквалифицирована|дискв|дисквалифікація|дискваліфікація|дискваліфікован|дисквалификован|ακυρωθηκε|
	αποκλειστηκε|ακυρωση|disket|diskv|diskv.|disk|disk.|diskvalifikacia|disqualifikation|disqualifikation.|disqualifie.|dyskw|dyskw.|diskw|diskw.|desqualificado|
	desqualificada|desqualificat|dq'd|dqd|dsq'd|diarddelwyd|gwaharddwyd|дисквалифициран|дискваліфіковано|дискваліфікований|diset|diska|diskattu|gedisk|gedisk.|descalificare|
	снят|снята|失格|被取消资格|犯规|실격 처리|실격|取消资格|取消資格|ตัดสิทธิ์|ถูกตัดสิทธิ์|مستبعد|مستبعدة|استبعد|استبعدت|נפסל|נפסלה|bị loại|truất quyền thi đấu|didiskualifikasi|diskualifikasi`

	DidNotStart = `d n s|never started|did not turn up|did not attend|ei laht|ei laht.|abs|abs.|dns|d.n.s|did not start|not started|no show|non partant|np|nicht gestartet|nicht am start|no salio|no presentado|non partito|niet gestart|nao partiu|nie wystartowal|
	nie wystartowala|ej start|ej startat|ikke startet|ikke mott|nestartoval|nestartovala|nestartoval/a|nem indult|nem rajtolt|ei startannut|ei lahtenyt|ei startinud|
	nije startao|nije startala|ni startal|ni startala|nu a luat startul|neprezentat|baslamadi|katilmadi|nestarteja|nestartavo|maetti ekki|nicht angetreten|niet vertrokken|
	n.a.|nao compareceu|не стартовал|не стартовала|не явился|не явилась|не стартував|не стартувала|не стартира|није стартовао|δεν εκκινησε|δεν ξεκινησε|heb ddechrau|neyavka|
	неявка|н/я|assente|ausente|absent|absente|nieobecny|nieobecna|afwezig|poissa|startade ej|startade inte|kom ej till start|kom inte till start|startet ikke|startede ikke|
	mette ikke|motte ikke|udeblevet|n.p.|forfait|no se presento|neodstartoval|neodstartovala|neodstartovano|nenastoupil|nenastoupila|nenastupil|nenastupila|n. gestartet|
	ni ddechreuodd|не з'явився|не з'явилася|no ha sortit|no presentat|absenta|gelmedi|neatvyko|neieradas|nestartejo|ei alustanud|puudus|
	nicht gestartet.|nao partiu.|faltou|nem jelent meg|欠場|未出走|不参加|缺赛|미출주|결장|불참|미출발|未出发|未出發|未起跑|缺席|ไม่ออกตัว|ไม่มา|لم يبدا|لم تبدا|لم ينطلق|غائب|غائبة|לא התחיל|לא התחילה|לא הגיע|לא הגיעה|không xuất phát|vắng mặt|tidak start|tidak mulai|tidak hadir|did not run|didn't run|not present|absent.|no-show|noshow|non starter|non-starter|nonstarter|non starters|not here|n/s|n.g|n.g.`
)

// Unranked are what stands in the place of a place for who ran and is in no ranking: non classé, poza
// konkurencją, ohne Wertung (common practice, no source).
const Unranked = `nc|n.c|n.c.|n/c|pk|p.k.|o.w|o.w.|unranked|not ranked`
