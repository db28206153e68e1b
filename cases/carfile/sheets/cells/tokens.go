package cells

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// tokens are the elements and texts of a part, in order.
type tokens struct {
	from  *xml.Decoder
	depth int
}

// next returns the next one; the error at the end is io.EOF.
func (t *tokens) next() (xml.Token, error) {
	token, err := t.from.Token()
	switch token.(type) {
	case xml.StartElement:
		if t.depth++; t.depth > maxDepth {
			return nil, refused(fmt.Sprintf("elements stand in one another more than %d deep", maxDepth), saveAgain)
		}
	case xml.EndElement:
		t.depth--
	}
	return token, err
}

// skip goes to the end of the element that has begun.
func (t *tokens) skip() error {
	for end := t.depth - 1; t.depth > end; {
		if _, err := t.next(); err != nil {
			return err
		}
	}
	return nil
}

// walk calls do for every element of a part that is XML; do may read what is in it.
func (a *archive) walk(part string, do func(e xml.StartElement, t *tokens) error) error {
	data, err := a.read(part)
	if err != nil {
		return err
	}
	t := &tokens{from: xml.NewDecoder(bytes.NewReader(data))}
	for {
		token, err := t.next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if e, ok := token.(xml.StartElement); ok && err == nil {
			err = do(e, t)
		}
		if err != nil {
			return noXML(part, err)
		}
	}
}

// noXML is what is wrong with a part, unless the error says so itself.
func noXML(part string, err error) error {
	var own *Error
	if errors.As(err, &own) {
		return err
	}
	text := strings.TrimPrefix(err.Error(), "XML syntax error on ")
	return refused(fmt.Sprintf("the part %s is no XML: %s", quoted(part), strings.Trim(quoted(text), `"`)), saveAgain)
}
