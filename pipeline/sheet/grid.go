package sheet

import (
	"encoding/binary"
	"slices"
	"sort"
)

// grid is a table held whole. Its cells lie in pieces, so that a large tab is
// never copied as it grows. The first looseCells of them are texts of their
// own, quick to reach; the rows of a larger table are packed into bytes, a
// fifth of the memory, and unpacked as they are asked for.
type grid struct {
	refs   []rowRef
	pieces *pieces
}

type pieces struct {
	cells  [][]string
	loose  int            // cells in them
	packed [][]byte       // rows, each cell's length before its text
	size   int64          // bytes in them
	struck map[int]bool   // rows whose letters are struck through
	cut    map[int][]int  // columns of the cells of other rows whose letters are
	notes  map[int]string // notes to the cells of rows
	fills  map[int]uint32 // colours behind the cells of rows, 0xRRGGBB
	unseen map[int]bool   // rows that somebody has hidden, not by a filter
	// rowsOfCells says that the rows are those of a workbook, which has one for all lines of a cell.
	rowsOfCells bool
}

// rowRef says where the cells of a row lie: piece counts the loose ones from 0
// up and the packed ones from -1 down.
type rowRef struct{ row, piece, from, to int32 }

const (
	pieceCells = 1 << 14
	pieceBytes = 1 << 20
	looseCells = 1 << 19
)

func newGrid() *grid { return &grid{pieces: &pieces{}} }

// fresh is an empty grid for rows of this one.
func (g *grid) fresh() *grid {
	out := newGrid()
	out.pieces.rowsOfCells, out.pieces.struck, out.pieces.cut, out.pieces.notes, out.pieces.fills, out.pieces.unseen = g.pieces.rowsOfCells, g.pieces.struck, g.pieces.cut, g.pieces.notes, g.pieces.fills, g.pieces.unseen
	return out
}

// mend puts what change gives for a row, where it gives something else, in its place, and
// returns the number of rows changed.
func (g *grid) mend(change func(i, row int, cells []string) (changed []string, ok bool)) (mended int) {
	var out *grid // made at the first change, of which most tables have none
	for i := range g.refs {
		row, cells := g.at(i)
		changed, ok := change(i, row, cells)
		if ok {
			if cells = changed; out == nil {
				out = g.fresh()
				for before := range i {
					out.add(g.at(before))
				}
			}
			mended++
		}
		if out != nil {
			out.add(row, cells)
		}
	}
	if out != nil {
		*g = *out
	}
	return mended
}

// mendRows puts rows, by their index, in the place of those that stand there. It returns their number.
func (g *grid) mendRows(edits map[int][]string) int {
	if len(edits) == 0 {
		return 0
	}
	return g.mend(func(i, _ int, _ []string) ([]string, bool) {
		cells, ok := edits[i]
		return cells, ok
	})
}

// newGridFor makes room for a table of known size.
func newGridFor(rows, cells int) *grid {
	g := newGrid()
	g.refs = make([]rowRef, 0, rows)
	g.pieces.cells = append(g.pieces.cells, make([]string, 0, max(1, min(cells, looseCells))))
	return g
}

// add copies the cells of the next row.
func (g *grid) add(row int, cells []string) {
	s := g.pieces
	if g.packs() || s.loose+len(cells) > looseCells {
		g.pack(row, cells)
		return
	}
	s.loose += len(cells)
	p := s.cells
	if len(p) == 0 || cap(p[len(p)-1])-len(p[len(p)-1]) < len(cells) {
		size := pieceCells
		if len(p) == 0 {
			size = 256 // most tabs are small
		}
		p = append(p, make([]string, 0, max(size, len(cells))))
	}
	last := len(p) - 1
	from := len(p[last])
	p[last] = append(p[last], cells...)
	s.cells = p
	g.refs = append(g.refs, rowRef{int32(row), int32(last), int32(from), int32(len(p[last]))})
}

// strike marks a row as struck through.
func (g *grid) strike(row int) {
	if g.pieces.struck == nil {
		g.pieces.struck = map[int]bool{}
	}
	g.pieces.struck[row] = true
}

// cutCells marks cells of a row as struck through.
func (g *grid) cutCells(row int, columns []int) {
	if g.pieces.cut == nil {
		g.pieces.cut = map[int][]int{}
	}
	g.pieces.cut[row] = slices.Clone(columns)
}

// hide marks a row as one that is not shown.
func (g *grid) hide(row int) {
	if g.pieces.unseen == nil {
		g.pieces.unseen = map[int]bool{}
	}
	g.pieces.unseen[row] = true
}

// packs says whether the texts of further rows are copied as they are added.
func (g *grid) packs() bool { return len(g.pieces.packed) > 0 }

// pack copies the texts of the next row.
func (g *grid) pack(row int, cells []string) {
	s := g.pieces
	need := 0
	for _, c := range cells {
		need += len(c) + binary.MaxVarintLen32
	}
	last := len(s.packed) - 1
	if last < 0 || cap(s.packed[last])-len(s.packed[last]) < need {
		s.packed = append(s.packed, make([]byte, 0, max(pieceBytes, need)))
		last++
	}
	b := s.packed[last]
	from := len(b)
	for _, c := range cells {
		b = append(binary.AppendUvarint(b, uint64(len(c))), c...)
	}
	s.packed[last] = b
	s.size += int64(len(b) - from)
	g.refs = append(g.refs, rowRef{int32(row), int32(-1 - last), int32(from), int32(len(b))})
}

// unpack appends the cells of a packed row, which share its bytes.
func (g *grid) unpack(r rowRef, cells []string) []string {
	b := g.pieces.packed[-1-r.piece][r.from:r.to:r.to]
	for len(b) > 0 {
		n, k := binary.Uvarint(b)
		end := k + int(n)
		cells = append(cells, bytesString(b[k:end:end]))
		b = b[end:]
	}
	return cells
}

// bytes is the memory that the packed rows and the references to all rows take.
func (g *grid) bytes() int64 { return g.pieces.size + 16*int64(len(g.refs)) }

// slice is the table of rows i to j-1, sharing the cells.
func (g *grid) slice(i, j int) *grid { return &grid{refs: g.refs[i:j:j], pieces: g.pieces} }

// between is the table of the rows from first to last, sharing the cells; last 0 means to the
// end. Rows are in the order of their numbers.
func (g *grid) between(first, last int) *grid {
	i, j := g.find(first), len(g.refs)
	if last > 0 {
		j = g.find(last + 1)
	}
	return g.slice(i, max(i, j))
}

// find is the index of the first row that has this number or a higher one.
func (g *grid) find(row int) int {
	return sort.Search(len(g.refs), func(i int) bool { return g.row(i) >= row })
}

// cellsOf gives the cells of the row of a number, nil where there is none.
func (g *grid) cellsOf(row int) []string {
	if i := g.find(row); i < len(g.refs) && g.row(i) == row {
		_, cells := g.at(i)
		return cells
	}
	return nil
}

func (g *grid) len() int { return len(g.refs) }

func (g *grid) row(i int) int { return int(g.refs[i].row) }

// width is the number of cells of a row.
func (g *grid) width(i int) (n int) {
	r := g.refs[i]
	if r.piece >= 0 {
		return int(r.to - r.from)
	}
	b := g.pieces.packed[-1-r.piece][r.from:r.to]
	for len(b) > 0 {
		size, k := binary.Uvarint(b)
		b = b[k+int(size):]
		n++
	}
	return n
}

// at gives a row; its cells stay valid.
func (g *grid) at(i int) (row int, cells []string) {
	r := g.refs[i]
	if r.piece < 0 {
		return int(r.row), g.unpack(r, make([]string, 0, 16))
	}
	return int(r.row), g.pieces.cells[r.piece][r.from:r.to:r.to]
}

func (g *grid) each(f func(row int, cells []string) error) error {
	var room []string
	for i, r := range g.refs {
		var cells []string
		if r.piece < 0 {
			room = g.unpack(r, room[:0])
			cells = room
		} else {
			_, cells = g.at(i)
		}
		if err := f(int(r.row), cells); err != nil {
			if err == errStop {
				return nil
			}
			return err
		}
	}
	return nil
}
