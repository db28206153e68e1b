// Command sixlink finds the forces in the suspension links of a race car and checks
// the links against them.
package main

import (
	"os"

	"sixlink/cli"
)

func main() {
	os.Exit(cli.Run(os.Args, os.Stdout, os.Stderr))
}
