package compare

// A KeyChange is a key of the car file whose value differs between two files.
type KeyChange struct {
	Path     string // of the key; entries of lists by name: "cases[Bump].wheel_factors"
	Old, New string // as the file would have it, in the bare unit; empty: the key is not there
}
