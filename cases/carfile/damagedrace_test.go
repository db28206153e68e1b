//go:build race

package carfile_test

// damagedFiles is how many damaged files are tried with the race detector, for workers
// that race do so at once; without it all are.
const damagedFiles = 500
