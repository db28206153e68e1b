package reports

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"slices"
	"strings"
)

// An orderedZip is the archive of a workbook. It keeps its entries, packed, until it
// is closed and writes them in the order of their names, for the library hands
// streamed sheets over in the order of a map. It packs for speed: sheets of numbers
// shrink little more for twice the time.
type orderedZip struct {
	out     io.Writer
	entries []*entry
	packer  *flate.Writer
	rows    map[string][]byte // put into the sheets of these names, which have none of their own
}

// An entry is one file of the archive, packed as it is written.
type entry struct {
	header zip.FileHeader
	packed bytes.Buffer
	packer *flate.Writer
	rows   []byte
}

// Create adds an entry; it is written to until the next is created.
func (z *orderedZip) Create(name string) (io.Writer, error) {
	if err := z.finish(); err != nil {
		return nil, err
	}
	e := &entry{header: zip.FileHeader{Name: name, Method: zip.Deflate}, rows: z.rows[name]}
	if z.packer == nil {
		var err error
		if z.packer, err = flate.NewWriter(&e.packed, flate.BestSpeed); err != nil {
			return nil, err
		}
	} else {
		z.packer.Reset(&e.packed)
	}
	e.packer = z.packer
	z.entries = append(z.entries, e)
	return e, nil
}

// noRows is a sheet without rows as the library writes it.
var noRows = []byte("<sheetData></sheetData>")

func (e *entry) Write(data []byte) (int, error) {
	if before, after, found := bytes.Cut(data, noRows); found && e.rows != nil {
		rows := e.rows
		e.rows = nil
		for _, part := range [][]byte{before, []byte("<sheetData>"), rows, []byte("</sheetData>"), after} {
			if _, err := e.Write(part); err != nil {
				return 0, err
			}
		}
		return len(data), nil
	}
	e.header.CRC32 = crc32.Update(e.header.CRC32, crc32.IEEETable, data)
	e.header.UncompressedSize64 += uint64(len(data))
	return e.packer.Write(data)
}

// finish ends the packing of the last entry.
func (z *orderedZip) finish() error {
	if len(z.entries) == 0 {
		return nil
	}
	e := z.entries[len(z.entries)-1]
	if e.rows != nil {
		return fmt.Errorf("%s: the sheet has no place for its rows", e.header.Name)
	}
	err := e.packer.Close()
	e.header.CompressedSize64 = uint64(e.packed.Len())
	return err
}

// AddFS adds the files of a file system.
func (z *orderedZip) AddFS(files fs.FS) error {
	return fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		w, err := z.Create(name)
		if err == nil {
			_, err = w.Write(data)
		}
		return err
	})
}

// Close writes the archive.
func (z *orderedZip) Close() error {
	if err := z.finish(); err != nil {
		return err
	}
	slices.SortFunc(z.entries, func(a, b *entry) int { return strings.Compare(a.header.Name, b.header.Name) })
	out := zip.NewWriter(z.out)
	for _, e := range z.entries {
		w, err := out.CreateRaw(&e.header)
		if err != nil {
			return err
		}
		if _, err := w.Write(e.packed.Bytes()); err != nil {
			return err
		}
	}
	return out.Close()
}
