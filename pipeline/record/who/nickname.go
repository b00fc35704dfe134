package who

import "strings"

// nicknames ties short and pet forms to the names they come from, one line a
// name. A form may stand on several lines. General knowledge of English and
// some neighbouring languages, no source.
const nicknames = `
abigail abi abby abbie gail
adam ad
adrian ade
agnes aggie nessa
aidan aiden ade
alan al allan allen
albert al bert bertie
alexander alex al alec alexis sandy xander lex sasha alasdair alistair
alexandra alex alexa lexi lexie sandra sandy sasha
alfred alf alfie fred freddie
alice ali allie
alison ali allison
amanda mandy manda
amelia amy millie milly mia
andrea andy andi
andrew andy drew andre
angela angie ange
ann anne annie anna nan nancy
anna annie ann anne ania anja
annabel annabelle bella bel
anthony tony ant antony
antonia toni
archibald archie
arthur art artie
barbara barb babs barbie
beatrice bea trixie beatrix
benedict ben benny
benjamin ben benji benny
bernard bernie bern
bernadette bernie
bethany beth
bradley brad
bridget biddy bridie brigid
callum cal calum
cameron cam
carol carole caz
caroline carol carrie caro lyn caz
cassandra cass cassie
catherine cath cathy kate katie katy cat cathryn kathryn katherine katharine kitty kath kathy kay kit catharine catriona kat
charles charlie chas chuck charley
charlotte charlie lottie charley lotte char
christina chris tina christine chrissie chrissy kirsty
christine chris chrissie chrissy tina
christopher chris kit topher
claire clare clair
clifford cliff
colin col
conor connor con
constance connie
cornelius con neil
cynthia cindy
daniel dan danny
danielle dani danni
david dave davy davie davey dai
deborah deb debbie debs debra debora
denise den
dennis den denis
desmond des
diana di diane dianne
dominic dom nic
donald don donnie
dorothy dot dottie dolly
douglas doug duggie
duncan dunc
edith edie
edward ed eddie ted teddy ned eddy
edmund ed eddie ned ted
edwin ed eddie
eleanor ellie ella nell nellie elle elinor eleanora nora
elizabeth liz lizzie beth betty eliza lisa libby elsie bess betsy liza lizzy lily elisabeth lise elspeth
ellen nell ellie nellie
emily em emmie millie milly
emma em emmie
eric rick
ernest ernie
esther essie hester
eugene gene
evelyn eve evie
eve evie eva
felicity fliss flick
florence flo florrie flossie
frances fran frankie francesca
francesca fran frankie chess cesca frances
francis frank fran
frank frankie franklin
frederick fred freddie freddy frederic fredrick
gabriel gabe
gabrielle gabby gaby gabi
gareth gaz gary
gary gaz garry
geoffrey geoff jeff jeffrey
george georgie
georgina georgie gina georgia
gerald gerry jerry ger
gerard gerry ged ger
gillian gill jill gilly jillian
gordon gord gordie
graham graeme grahame gray
gregory greg gregor
gwendolen gwen gwennie gwendoline
hannah han hanna
harold harry hal
harriet hattie harrie
heather hev
helen nell nellie lena helena
henry harry hal hank
herbert herb bert
hilary hils
howard howie
hugh hughie
ian iain
isaac ike zac
isabel izzy isobel bella isabelle isabella izzie belle
jacob jake
jacqueline jackie jacqui jacky jaqueline
james jim jimmy jamie jem jimbo
jane janie janey
janet jan
janice jan
jason jay jase
jasmine jas jazz
jean jeannie jeanie
jeffrey jeff geoff
jemima jem mima
jennifer jen jenny jenni jennie
jeremy jez jerry jem
jerome jerry
jessica jess jessie
joan joanie
joanna jo joanne joey
joanne jo joann
john johnny jon jack johnnie ian sean
jonathan jon jonny johnny jono johnathan jonathon
joseph joe joey jo
josephine jo josie jojo
joshua josh
joyce joy
judith judy jude judi
julia jules julie
julian jules
juliet jules julie juliette
justin jus
karen kaz
katherine kate katie katy kath kathy kat kathryn catherine kit kitty kay
kathleen kath kathy kate katie
kenneth ken kenny
kerry kez
kevin kev
kimberly kim kimberley
kirsten kirsty kirstie
laura laurie
lauren loz laurie
laurence larry laurie lawrence lol
leonard len lenny leo
leslie les lesley
lewis lew louis lou
lilian lily lil lillian
linda lin lyn lindy lynda
lindsay linz lindsey
louis lou louie
louise lou
lucinda lucy cindy
lucy lu
luke lukas lucas
lydia liddy
madeleine maddie maddy madeline mads
malcolm mal malc
margaret maggie meg peggy madge marge margie margo greta rita mags peg daisy
maria mary marie mia ria
marilyn lyn
marion marian
martin marty mart
martha marty mattie
mary molly polly marie maria may
matilda tilly tilda mattie
matthew matt mat matty mathew
maureen mo
maurice mo morris
maximilian max
maxine max
megan meg meggie
melanie mel
melissa mel lissa missy
michael mike mick micky mickey mikey mikael
michelle shell chelle mich shelley shelly
miranda mandy randa
mohammed mo mohamed muhammad mohammad mohamad muhammed
morgan mo
nancy nan
natalie nat natalia
natasha tash nat tasha
nathan nat nate nathaniel
nathaniel nat nate nathan
nicholas nick nicky nico nic nicolas nik
nicola nicky nic nikki nicole nicki nickie
nicole nikki nicky nic
nigel nige
norman norm
oliver ollie olly oli
olivia liv livvy livia
oscar oz
oswald oz ozzie
pamela pam pammy
patricia pat trish patsy tricia patty trisha
patrick pat paddy rick
paul paulie
pauline paula
penelope penny pen
peter pete
philip phil phillip pip
philippa pip pippa phil
priscilla cilla
rachel rach rachael
raymond ray
rebecca becky bex becca beck becs
reginald reg reggie
richard rich rick dick ricky richie ritchie dickie
robert rob bob bobby robbie bert robby
roberta bobbie
robin rob
rodney rod
roger rog
roland roly
ronald ron ronnie
rosemary rose rosie romy
rosalind ros roz
rose rosie
rosamund ros
roxanne rox
rupert rupe
russell russ rusty
ruth ruthie
samantha sam sammy
samuel sam sammy
sandra sandy san
sarah sara sally sadie
scott scotty
sean shaun shawn
sebastian seb bas
sharon shaz
sheila shelagh
shirley shirl
sidney sid sydney syd
simon si
sophie soph sophia sofia
stanley stan
stella stell
stephanie steph steff stef
stephen steve steven ste stevie
stewart stuart stu stew
susan sue susie suzie suzy sukie susannah
susannah sue susie suzanna suzanne zanna
suzanne sue suzie suzy
sylvia syl silvia
teresa tess terry tessa theresa tracey
terence terry tel terrence
thea dorothea theodora
theodore theo ted teddy
theresa tess terry tessa terri
thomas tom tommy
timothy tim timmy
tobias toby
tracey trace tracy
trevor trev
ursula urs
valerie val
vanessa ness nessa
veronica ron ronnie vera
victor vic
victoria vicky vicki tori vic vikki vickie
vincent vince vin vinnie
virginia ginny ginger
vivian viv vivienne
walter walt wally
wendy wend
wilfred wilf fred
william will bill billy willie liam wills bil
winifred win winnie
yvonne von
zachary zac zack zach zak
zoe zo
alejandro alex ale
alessandro alex ale sandro
andreas andi andy
antonio toni tono antonino nino
bernhard bernd
carlos charly
concepcion concha conchi
dimitri dima
dmitri dima mitya
eduardo edu lalo
ekaterina katya
elena lena
enrique quique
fernando nando
francisco paco pancho curro fran
friedrich fritz
georg jorg
giovanni gianni nanni
giuseppe beppe peppe pino
guillermo memo
hans johannes hannes jan johann
heinrich heinz heiner
ignacio nacho
jesus chus
johan jan hans
jose pepe
joseph josef sepp
jurgen jurg
katarzyna kasia
agnieszka aga
aleksandra ola
andrzej jedrek
barbara basia
dariusz darek
grzegorz grzes
jakub kuba
joanna asia
krzysztof krzys
ludwig lutz
luis lucho
malgorzata gosia
manuel manolo manu
margarethe grete gretel
magdalena magda lena
maria maja mia
michal misza
mikhail misha
nikolai kolya
pawel pavel
peter piotr petr
pilar pili
rosario charo
stanislaw staszek
stefan steff
slawomir slawek
thomas tomas tomasz
tomasz tomek
vladimir vova volodya
wilhelm willi willy
wojciech wojtek
wolfgang wolf
xavier xavi
zbigniew zbyszek
derek del dez
desiree des
dafydd dai dave david
gwilym gwil will
rhiannon rhi
siobhan shiv
padraig paddy pat patrick
seamus shay jim
eoghan owen
diarmuid derry dermot
fionnuala nuala
donal don
alasdair ally alistair al
euan ewan ewen
roisin ro rose
ailsa ails
abdullah abdul abdallah
ibrahim ibby
ismail ishy
yusuf yousef joe joseph
hussain hus
harpreet harry
gurpreet gurp
jaswinder jas jazz
jasbir jas jazz
harjit harj harry
manjit manj
parminder pam
sukhvinder sukhi sukh
sukhdev sukh
kulwinder kully
balwinder bal bally
balbir bal bally
satnam sat
rajinder raj
rajesh raj
rajiv raj
ravinder ravi
ravindra ravi
surinder sunny
amardeep amar
mandeep mandy
venkatesh venkat
krishnan krish
krishna krish
lakshmi laks
priyanka priya
siddharth sid
abhishek abhi
nikhil nik nick
vikram vik
vijay vij
sanjay sanj
oleksandr sasha olek alex oleksander
oleksandra sasha lesya
aleksander olek alek
aleksandr sasha alex
alexandre alex xandre
alexandros alex alekos
krzysztof kris
kazimierz kazik
jaroslaw jarek
przemyslaw przemek
radoslaw radek
miroslaw mirek
boguslaw bogus
wladyslaw wladek
henryk heniek
bartlomiej bartek
bartosz bartek
mateusz mati
piotr piotrek
zofia zosia
elzbieta ela
danuta danka
magdalena madzia
karolina karola
yevgeny zhenya
evgeny zhenya gene
sergey serhiy serge
serhiy serge
mykola kolya nick
olena lena
tatiana tanya
tetiana tanya
svetlana sveta
irina ira
iryna ira
anastasia nastya stacy
ludmila luda mila
galina galya
pavel pasha
ivan vanya
alexei alyosha alex
oleksiy alyosha alex
anatoly tolya
vyacheslav slava
stanislav stas
vladislav vlad
vladimir vlad
volodymyr vova vlad
viktor vitya vic
kateryna katya kate
roberto beto rob
alberto beto al
guadalupe lupe
dolores lola
mercedes merche
montserrat montse
consuelo chelo
isabel isa
teresa tere
santiago santi
francisca paca
vincenzo enzo
lorenzo renzo
domenico mimmo
salvatore toto
matteo teo
filippo pippo
luigi gigi
leonardo leo
raffaele lele
elisabetta betta
joaquim quim
cornelis kees cor
hendrik henk rik
wilhelmus wim willem
willem wim
johannes joop
jacobus koos jaap
gerardus gerrit ger
petrus piet
adrianus ad adriaan
franciscus frans
elisabeth els lies betty
margaretha greet griet
katharina kathi
matthias matze matt
sebastian basti
maximilian maxi
christoph chris
christian chris
dietrich dieter
joachim achim jochen
nikolaus klaus niko
rudolf rudi
siegfried siggi
ulrich uli
ulrike uli
gabriele gabi
susanne susi
charlotte lotte
lars lasse
margareta greta
emmanuel manu manny
emanuel manu manny
benoit ben
mathieu mat
guillaume will
veronique vero
genevieve gen
dimitrios jimmy dimitri mitsos
konstantinos kostas costas dinos
georgios george yiorgos giorgos
ioannis yannis giannis john
nikolaos nikos nick
panagiotis panos takis
athanasios thanasis
evangelos vangelis
mehmet memo
mustafa mus
`

// nickGroups gives the lines of nicknames that a name stands on.
var nickGroups, nickGroupCount = func() (map[string][]int16, int) {
	m := map[string][]int16{}
	line := int16(0)
	for l := range strings.SplitSeq(strings.TrimSpace(nicknames), "\n") {
		for _, w := range strings.Fields(l) {
			m[w] = append(m[w], line)
		}
		line++
	}
	return m, int(line)
}()
