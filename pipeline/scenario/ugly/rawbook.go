package ugly

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
)

// rawBook writes a workbook part by part, with what other programs write and
// the library doesn't: inline strings, rich text, cached formula results, and
// cells without references (ECMA-376 Part 1, 18.3.1.4, 18.4.4, 18.3.1.40).
func (g *gen) rawBook(p plan, tabs []tab) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	add := func(name, body string) error {
		w, err := z.Create(name)
		if err != nil {
			return err
		}
		_, err = w.Write([]byte("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n" + body))
		return err
	}
	const (
		main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
		rel  = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
		pkg  = "http://schemas.openxmlformats.org/package/2006/"
		kind = "application/vnd.openxmlformats-officedocument.spreadsheetml."
	)
	var types, rels, sheets strings.Builder
	strs := &sharedStrings{at: map[string]int{}}
	formats := &numberFormats{at: map[string]int{"": 0}}
	for i, t := range tabs {
		n := i + 1
		fmt.Fprintf(&types, `<Override PartName="/xl/worksheets/sheet%d.xml" ContentType="%sworksheet+xml"/>`, n, kind)
		fmt.Fprintf(&rels, `<Relationship Id="rId%d" Type="%s/worksheet" Target="worksheets/sheet%d.xml"/>`, n, rel, n)
		state := ""
		if t.hidden {
			state = ` state="hidden"`
		}
		fmt.Fprintf(&sheets, `<sheet name="%s" sheetId="%d"%s r:id="rId%d"/>`, escape(t.name), n, state, n)
		body := fmt.Sprintf(`<worksheet xmlns="%s"><sheetData>%s</sheetData>`, main, p.rawRows(t, strs, formats))
		if len(t.merged) > 0 {
			body += fmt.Sprintf(`<mergeCells count="%d">`, len(t.merged))
			for _, m := range t.merged {
				body += fmt.Sprintf(`<mergeCell ref="A%d:H%d"/>`, m+1, m+1)
			}
			body += `</mergeCells>`
		}
		if err := add(fmt.Sprintf("xl/worksheets/sheet%d.xml", n), body+`</worksheet>`); err != nil {
			return nil, err
		}
	}
	active := 0
	for active < len(tabs)-1 && tabs[active].hidden {
		active++
	}
	date1904 := ""
	if p["date1904"] == "yes" {
		date1904 = `<workbookPr date1904="1"/>`
	}
	n := len(tabs)
	parts := [][2]string{
		{"[Content_Types].xml", `<Types xmlns="` + pkg + `content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>` +
			`<Override PartName="/xl/workbook.xml" ContentType="` + kind + `sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="` + kind + `styles+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="` + kind + `sharedStrings+xml"/>` + types.String() + `</Types>`},
		{"_rels/.rels", `<Relationships xmlns="` + pkg + `relationships"><Relationship Id="rId1" Type="` + rel + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`},
		{"xl/workbook.xml", `<workbook xmlns="` + main + `" xmlns:r="` + rel + `">` + date1904 + fmt.Sprintf(`<bookViews><workbookView activeTab="%d"/></bookViews>`, active) + `<sheets>` + sheets.String() + `</sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", `<Relationships xmlns="` + pkg + `relationships">` + rels.String() +
			fmt.Sprintf(`<Relationship Id="rId%d" Type="%s/styles" Target="styles.xml"/><Relationship Id="rId%d" Type="%s/sharedStrings" Target="sharedStrings.xml"/>`, n+1, rel, n+2, rel) + `</Relationships>`},
		{"xl/styles.xml", formats.part(main)},
		{"xl/sharedStrings.xml", `<sst xmlns="` + main + `">` + strs.body.String() + `</sst>`},
	}
	for _, x := range parts {
		if err := add(x[0], x[1]); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func escape(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		panic(err) // a bytes.Buffer takes everything
	}
	return b.String()
}

type sharedStrings struct {
	at   map[string]int
	body strings.Builder
}

// id stores s; rich text is split into two runs, as an editor leaves it after
// one letter was made bold.
func (x *sharedStrings) id(s string, rich bool) int {
	if n, ok := x.at[s]; ok {
		return n
	}
	n := len(x.at)
	x.at[s] = n
	r := []rune(s)
	if rich && len(r) > 2 {
		fmt.Fprintf(&x.body, `<si><r><rPr><b/></rPr><t xml:space="preserve">%s</t></r><r><t xml:space="preserve">%s</t></r></si>`, escape(string(r[:2])), escape(string(r[2:])))
	} else {
		fmt.Fprintf(&x.body, `<si><t xml:space="preserve">%s</t></si>`, escape(s))
	}
	return n
}

type numberFormats struct {
	at    map[string]int
	order []string
}

func (x *numberFormats) id(code string) int {
	if n, ok := x.at[code]; ok {
		return n
	}
	x.order = append(x.order, code)
	x.at[code] = len(x.order)
	return len(x.order)
}

func (x *numberFormats) part(main string) string {
	var fmts, xfs strings.Builder
	for i, code := range x.order {
		fmt.Fprintf(&fmts, `<numFmt numFmtId="%d" formatCode="%s"/>`, 164+i, escape(code))
		fmt.Fprintf(&xfs, `<xf numFmtId="%d" fontId="0" fillId="0" borderId="0" applyNumberFormat="1"/>`, 164+i)
	}
	numFmts := ""
	if len(x.order) > 0 {
		numFmts = fmt.Sprintf(`<numFmts count="%d">%s</numFmts>`, len(x.order), fmts.String())
	}
	return `<styleSheet xmlns="` + main + `">` + numFmts + `<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>` +
		fmt.Sprintf(`<cellXfs count="%d"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>%s</cellXfs></styleSheet>`, 1+len(x.order), xfs.String())
}

func (p plan) rawRows(t tab, strs *sharedStrings, formats *numberFormats) string {
	var b strings.Builder
	for ri, r := range t.rows {
		empty := true
		for _, c := range r.cells {
			empty = empty && c.kind == isBlank
		}
		if empty {
			continue // rows may be left out altogether
		}
		fmt.Fprintf(&b, `<row r="%d">`, ri+1)
		for ci, c := range r.cells {
			ref := place.ColumnLetters(ci) + strconv.Itoa(ri+1)
			switch {
			case c.kind == isBlank:
			case c.kind == isText || p["cells"] == "text":
				switch p["cells"] {
				case "inline":
					fmt.Fprintf(&b, `<c r="%s" t="inlineStr"><is><t xml:space="preserve">%s</t></is></c>`, ref, escape(c.s))
				case "formula":
					if len(r.lines) > 0 { // the cached text of a look-up
						fmt.Fprintf(&b, `<c r="%s" t="str"><f>VLOOKUP(1,lookup!A:C,2,0)</f><v>%s</v></c>`, ref, escape(c.s))
						break
					}
					fallthrough
				default:
					fmt.Fprintf(&b, `<c r="%s" t="s"><v>%d</v></c>`, ref, strs.id(c.s, p["cells"] == "rich"))
				}
			default:
				f := ""
				if p["cells"] == "formula" && len(r.lines) > 0 {
					f = "<f>C1-B1</f>"
				}
				fmt.Fprintf(&b, `<c r="%s" s="%d">%s<v>%s</v></c>`, ref, formats.id(c.f), f, strconv.FormatFloat(p.shift(c), 'g', -1, 64))
			}
		}
		b.WriteString(`</row>`)
	}
	return b.String()
}
