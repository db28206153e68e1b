package sheets

import "go.yaml.in/yaml/v4"

// Together puts the values of a workbook together, whether or not they are a car.
func Together(name string, src []byte) (*yaml.Node, error) {
	t, err := read(name, src)
	if err != nil {
		return nil, err
	}
	return t.Values(), nil
}

// Layouts are the sheets with their headings.
func Layouts() map[string][]string {
	out := map[string][]string{}
	for _, l := range layouts {
		out[l.name] = l.names()
	}
	return out
}
