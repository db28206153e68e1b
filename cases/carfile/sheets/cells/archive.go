package cells

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
)

// The first bytes of files: of archives (APPNOTE.TXT 4.3.7 and 4.3.16), and of the compound files in
// which old and encrypted workbooks come ([MS-CFB] 2.2).
var (
	zipMark      = []byte("PK\x03\x04")
	emptyZipMark = []byte("PK\x05\x06")
	compoundMark = []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")
)

// Is tells whether a file is a workbook, by its first bytes: an archive, or the form of
// old and of encrypted workbooks.
func Is(src []byte) bool {
	return bytes.HasPrefix(src, zipMark) || bytes.HasPrefix(src, emptyZipMark) || bytes.HasPrefix(src, compoundMark)
}

// An archive is the parts of a workbook by name.
type archive struct {
	parts map[string]*zip.File
	left  int64 // bytes that may still be read
}

func open(src []byte) (*archive, error) {
	if bytes.HasPrefix(src, compoundMark) {
		return nil, refused("the workbook is encrypted, or of the old form .xls", "save it as .xlsx without a password")
	}
	if len(src) > maxFile {
		return nil, refused(fmt.Sprintf("the workbook has more than %d bytes", maxFile), "take pictures and long tables out; a car takes a few hundred kilobytes")
	}
	z, err := zip.NewReader(bytes.NewReader(src), int64(len(src)))
	if err != nil {
		return nil, refused("the file is a damaged archive: "+plain(err), saveAgain)
	}
	if len(z.File) > maxParts {
		return nil, refused(fmt.Sprintf("the workbook has %d parts, more than %d", len(z.File), maxParts), saveAgain)
	}
	a := &archive{map[string]*zip.File{}, maxRead}
	var total uint64
	for _, f := range z.File {
		name := strings.TrimPrefix(f.Name, "/")
		if a.parts[name] != nil {
			return nil, refused("the part "+quoted(name)+" is in the file twice", saveAgain)
		}
		a.parts[name] = f
		if total += min(f.UncompressedSize64, MaxUnzipped+1); total > MaxUnzipped {
			return nil, refused(fmt.Sprintf("the workbook unpacks to more than %d MB", MaxUnzipped>>20), "take pictures and long tables out; a car takes a few hundred kilobytes")
		}
	}
	switch {
	case a.parts["content.xml"] != nil && a.parts["mimetype"] != nil:
		return nil, refused("this is an OpenDocument file", "save it as .xlsx, which is Office Open XML")
	case a.parts["[Content_Types].xml"] == nil:
		return nil, refused("this archive is no workbook", "give a car file, or a workbook saved as .xlsx")
	}
	return a, nil
}

// read unpacks a part, as far as the parts that are read may take together.
func (a *archive) read(name string) ([]byte, error) {
	f := a.parts[name]
	if f == nil {
		return nil, refused("the workbook has no part "+quoted(name), saveAgain)
	}
	r, err := f.Open()
	if err != nil {
		return nil, refused("the part "+quoted(name)+" cannot be unpacked: "+plain(err), saveAgain)
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, a.left+1))
	if err != nil {
		return nil, refused("the part "+quoted(name)+" cannot be unpacked: "+plain(err), saveAgain)
	}
	if a.left -= int64(len(data)); a.left < 0 {
		return nil, refused(fmt.Sprintf("the sheets of the workbook unpack to more than %d MB", maxRead>>20), "take out what is not the car's; a car takes a few hundred kilobytes")
	}
	return data, nil
}

// plain is the text of an error of the archive, without its package.
func plain(err error) string {
	if errors.Is(err, zip.ErrFormat) {
		return "it is not what the list of its contents says"
	}
	return strings.TrimPrefix(err.Error(), "zip: ")
}

// quoted shows a text of the file, cut if it is long.
func quoted(s string) string {
	if len(s) > 60 {
		s = s[:60] + "…"
	}
	return fmt.Sprintf("%q", s)
}
