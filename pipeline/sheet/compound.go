package sheet

import (
	"encoding/binary"
	"errors"
	"unicode/utf16"
)

// compoundStream takes a stream, the first of some names that there is, out of a compound file
// ([MS-CFB], version 20210817): a file that is divided into sectors like a disk.
func compoundStream(data []byte, names ...string) ([]byte, error) {
	const (
		header     = 512
		entrySize  = 128
		endOfChain = 0xFFFFFFFE
		headFATs   = 109
	)
	damaged := errors.New("it is an old XLS workbook that is damaged or not whole; if a spreadsheet program opens it, save it as XLSX there and load that, else ask for it again")
	if len(data) < header {
		return nil, damaged
	}
	u16 := func(b []byte, at int) int { return int(binary.LittleEndian.Uint16(b[at:])) }
	u32 := func(b []byte, at int) uint32 { return binary.LittleEndian.Uint32(b[at:]) }
	shift := u16(data, 30)
	if shift != 9 && shift != 12 {
		return nil, damaged
	}
	size := 1 << shift
	sector := func(n uint32) []byte {
		at := (int64(n) + 1) * int64(size)
		if at < 0 || at >= int64(len(data)) {
			return nil
		}
		return data[at:min(int64(len(data)), at+int64(size))]
	}
	most := len(data)/size + 1
	var fatSectors []uint32
	for i := range headFATs {
		fatSectors = append(fatSectors, u32(data, 76+4*i))
	}
	for next, k := u32(data, 68), 0; next < endOfChain-1 && k < most; k++ {
		s := sector(next)
		if len(s) < size {
			return nil, damaged
		}
		for i := 0; i < size-4; i += 4 {
			fatSectors = append(fatSectors, u32(s, i))
		}
		next = u32(s, size-4)
	}
	var fat []uint32
	for _, n := range fatSectors {
		if s := sector(n); n < endOfChain-1 && len(s) == size && len(fat) <= most {
			for i := 0; i < size; i += 4 {
				fat = append(fat, u32(s, i))
			}
		}
	}
	chain := func(start uint32) (out []byte) {
		for n, k := start, 0; n < endOfChain-1 && int64(n) < int64(len(fat)) && k < most; k++ {
			out = append(out, sector(n)...)
			n = fat[n]
		}
		return out
	}
	directory := chain(u32(data, 48))
	entry := func(name string) []byte {
		for at := 0; at+entrySize <= len(directory); at += entrySize {
			e := directory[at : at+entrySize]
			n := u16(e, 64)/2 - 1
			if e[66] != 2 && e[66] != 5 || n < 0 || n > 31 {
				continue
			}
			letters := make([]uint16, n)
			for i := range letters {
				letters[i] = uint16(u16(e, 2*i))
			}
			if string(utf16.Decode(letters)) == name {
				return e
			}
		}
		return nil
	}
	for _, name := range names {
		e := entry(name)
		if e == nil {
			continue
		}
		length := int64(u32(e, 120))
		out := []byte(nil)
		if root := entry("Root Entry"); length < int64(u32(data, 56)) && root != nil {
			mini, small := chain(u32(data, 60)), chain(u32(root, 116))
			const unit = 64
			for n, k := u32(e, 116), 0; n < endOfChain-1 && k <= len(small)/unit; k++ {
				at := int64(n) * unit
				if at+unit > int64(len(small)) || int64(n)*4+4 > int64(len(mini)) {
					return nil, damaged
				}
				out = append(out, small[at:at+unit]...)
				n = u32(mini, int(n)*4)
			}
		} else {
			out = chain(u32(e, 116))
		}
		if int64(len(out)) < length {
			return nil, damaged
		}
		return out[:length], nil
	}
	return nil, errors.New("it is no workbook; open it in the program it is of, save its table as XLSX or CSV, and load that")
}
