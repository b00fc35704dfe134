package sheet

// grid is a table held whole. Its cells lie in pieces, so that a large tab is
// never copied as it grows.
type grid struct {
	refs   []rowRef
	pieces *[][]string
}

// rowRef says where the cells of a row lie.
type rowRef struct{ row, piece, from, to int32 }

const pieceCells = 1 << 14

func newGrid() *grid { return &grid{pieces: &[][]string{}} }

// newGridFor makes room for a table of known size.
func newGridFor(rows, cells int) *grid {
	g := newGrid()
	g.refs = make([]rowRef, 0, rows)
	*g.pieces = append(*g.pieces, make([]string, 0, max(1, min(cells, 1<<20))))
	return g
}

// add copies the cells of the next row.
func (g *grid) add(row int, cells []string) {
	p := *g.pieces
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
	*g.pieces = p
	g.refs = append(g.refs, rowRef{int32(row), int32(last), int32(from), int32(len(p[last]))})
}

// slice is the table of rows i to j-1, sharing the cells.
func (g *grid) slice(i, j int) *grid { return &grid{refs: g.refs[i:j:j], pieces: g.pieces} }

func (g *grid) len() int { return len(g.refs) }

func (g *grid) row(i int) int { return int(g.refs[i].row) }

func (g *grid) at(i int) (row int, cells []string) {
	r := g.refs[i]
	return int(r.row), (*g.pieces)[r.piece][r.from:r.to:r.to]
}

func (g *grid) each(f func(row int, cells []string) error) error {
	for i := range g.refs {
		row, cells := g.at(i)
		if err := f(row, cells); err != nil {
			if err == errStop {
				return nil
			}
			return err
		}
	}
	return nil
}
