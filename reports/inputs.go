package reports

// hashDigits is how much of the hash of a file stands where there is no room for all of it.
const hashDigits = 12

// fileLines say which files the car was read from, a line each, with their hashes.
func (r Report) fileLines() []string {
	out := []string{"car file " + r.File + ", SHA-256 " + r.SHA256}
	for _, f := range r.Car.Files {
		out = append(out, "with "+f.Name+", SHA-256 "+f.SHA256)
	}
	return out
}

// leafLines are those lines for a cover of lines of text.
func (r Report) leafLines() (out [][2]string) {
	for i, text := range r.fileLines() {
		if i == 0 {
			text = "C" + text[1:]
		}
		out = append(out, [2]string{"text", text})
	}
	return out
}

// fileFields are the name and the hash of each file that the car file names.
func (r Report) fileFields() (out [][2]string) {
	for _, f := range r.Car.Files {
		out = append(out, [2]string{"SHA-256 of " + printable(f.Name), f.SHA256})
	}
	return out
}

// identity is what every page bears: the hash of the car file, and the first digits of those
// of the files that it names.
func (r Report) identity() string { return "SHA-256 " + r.SHA256 + r.more() }

// more are the first digits of the hashes of the files that the car file names, each behind
// a plus; empty: it names none.
func (r Report) more() (out string) {
	for _, f := range r.Car.Files {
		out += " + " + f.SHA256[:min(hashDigits, len(f.SHA256))]
	}
	return out
}

// files writes on the page which files the car was read from.
func (p *page) files(r Report, lead string) {
	for _, text := range r.fileLines() {
		p.line("%s", lead+printable(text))
	}
}
