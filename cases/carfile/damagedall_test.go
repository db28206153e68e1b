//go:build !race

package carfile_test

// damagedFiles is how many damaged files are tried.
const damagedFiles = 10_000
