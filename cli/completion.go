package cli

import (
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

const completionName = "completion"

// completers make the script of a shell from the commands.
var completers = map[string]func(commands []*cli.Command) string{
	"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion,
}

func shells() []string { return []string{"bash", "fish", "zsh"} }

// completionCommand: a script by which a shell completes command lines.
func completionCommand() *cli.Command {
	return &cli.Command{
		Name:      completionName,
		Usage:     "a script by which a shell completes commands, options, words and file names",
		ArgsUsage: "bash|fish|zsh",
		Description: "bash: add   source <(sixlink completion bash)   to ~/.bashrc.\n" +
			"zsh: write it to a file _sixlink in a folder of $fpath.\n" +
			"fish: write it to ~/.config/fish/completions/sixlink.fish.",
		Flags:  []cli.Flag{outputFlag},
		Action: completion,
	}
}

func completion(c *cli.Context) error {
	if c.NArg() != 1 || !slices.Contains(shells(), c.Args().First()) {
		return usage("completion needs the name of a shell: %s: name one of them", strings.Join(shells(), ", "))
	}
	script := completers[c.Args().First()](c.App.Commands)
	return writeMade(c, func() ([]byte, error) { return []byte(script), nil })
}

// bashCompletion needs nothing but bash itself. A colon or an equals sign splits a word
// there, so that what stands before it is looked for two words back.
func bashCompletion(commands []*cli.Command) string {
	var b strings.Builder
	line(&b, "# Completion of sixlink for bash.")
	line(&b, "_sixlink() {")
	line(&b, "  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} IFS=$'\\n'")
	line(&b, "  COMPREPLY=()")
	line(&b, "  if [[ $cur == '=' ]]; then cur=; elif [[ $prev == '=' ]]; then prev=${COMP_WORDS[COMP_CWORD-2]}; fi")
	line(&b, "  local words= files=")
	line(&b, "  if ((COMP_CWORD == 1)); then")
	line(&b, "    words=%s", bashWords(names(commands, "--help", "--version")))
	line(&b, "  else")
	line(&b, "    case ${COMP_WORDS[1]},$prev in")
	for _, c := range commands {
		bashValues(&b, c)
	}
	line(&b, "    *) case ${COMP_WORDS[1]} in")
	for _, c := range commands {
		files, words := takes(c)
		var all []string
		for _, o := range options(c) {
			all = append(all, "--"+o.name)
		}
		if !files {
			line(&b, "      %s) words=%s ;;", c.Name, bashWords(append(words, all...)))
			continue
		}
		line(&b, "      %s) if [[ $cur == -* ]]; then words=%s; else files=1; fi ;;", c.Name, bashWords(all))
	}
	line(&b, "      esac ;;")
	line(&b, "    esac")
	line(&b, "  fi")
	line(&b, "  if [[ $words ]]; then")
	line(&b, "    local word")
	line(&b, "    for word in $words; do")
	line(&b, "      [[ $word == \"$cur\"* ]] && COMPREPLY+=(\"${word// /\\\\ }\")")
	line(&b, "    done")
	line(&b, "  fi")
	line(&b, "  if [[ $files ]]; then")
	line(&b, "    compopt -o filenames 2>/dev/null")
	line(&b, "    COMPREPLY+=($(compgen -f -- \"$cur\"))")
	line(&b, "  fi")
	line(&b, "}")
	line(&b, "complete -F _sixlink sixlink")
	return b.String()
}

// bashValues writes what may follow the options of a command.
func bashValues(b *strings.Builder, c *cli.Command) {
	for _, o := range options(c) {
		if o.value == "" {
			continue
		}
		then := ":"
		if len(o.words) > 0 {
			then = "words=" + bashWords(o.words)
		}
		if o.file() {
			then += "; files=1"
		}
		line(b, "    %s,--%s) %s ;;", c.Name, o.name, then)
	}
}

// bashWords joins words by line breaks, as the script splits them.
func bashWords(words []string) string {
	return "$'" + strings.ReplaceAll(strings.Join(words, `\n`), "'", `\'`) + "'"
}

func names(commands []*cli.Command, more ...string) (out []string) {
	for _, c := range commands {
		out = append(out, c.Name)
	}
	return append(out, more...)
}

// zshWord escapes what has a meaning in a specification of zsh.
var zshWord = strings.NewReplacer(`\`, `\\`, ":", `\:`, "[", `\[`, "]", `\]`, "(", `\(`, ")", `\)`, " ", `\ `)

// zshText does so within the brackets of a description.
var zshText = strings.NewReplacer(`\`, `\\`, ":", `\:`, "[", `\[`, "]", `\]`)

func zshCompletion(commands []*cli.Command) string {
	var b strings.Builder
	line(&b, "#compdef sixlink")
	line(&b, "# Completion of sixlink for zsh.")
	line(&b, "_sixlink() {")
	line(&b, "  local curcontext=$curcontext state line")
	line(&b, "  local -a commands")
	line(&b, "  commands=(")
	for _, c := range commands {
		line(&b, "    %s", quotedFor(c.Name+":"+oneLine(c.Usage)))
	}
	line(&b, "  )")
	line(&b, "  _arguments -C '--help[show help]' '--version[show the version]' '1: :->command' '*:: :->rest'")
	line(&b, "  case $state in")
	line(&b, "  command) _describe command commands ;;")
	line(&b, "  rest)")
	line(&b, "    case $line[1] in")
	for _, c := range commands {
		line(&b, "    %s) _arguments \\", c.Name)
		for _, o := range options(c) {
			line(&b, "      %s \\", quotedFor(zshOption(o)))
		}
		files, words := takes(c)
		switch {
		case files:
			line(&b, "      '*:file:_files' ;;")
		case len(words) > 0:
			line(&b, "      %s ;;", quotedFor("1:word:("+strings.Join(words, " ")+")"))
		default:
			line(&b, "      '*: :' ;;")
		}
	}
	line(&b, "    esac ;;")
	line(&b, "  esac")
	line(&b, "}")
	line(&b, "_sixlink \"$@\"")
	return b.String()
}

func zshOption(o option) string {
	s := "--" + o.name + "[" + zshText.Replace(oneLine(o.usage)) + "]"
	if o.value == "" {
		return s
	}
	s += ":" + zshText.Replace(strings.ToLower(o.value)) + ":"
	var words []string
	for _, w := range o.words {
		words = append(words, zshWord.Replace(w))
	}
	switch {
	case o.file() && len(words) > 0:
		s += "{_files; compadd -- " + strings.Join(words, " ") + "}"
	case o.file():
		s += "_files"
	case len(words) > 0:
		s += "(" + strings.Join(words, " ") + ")"
	}
	return s
}

func fishCompletion(commands []*cli.Command) string {
	var b strings.Builder
	line(&b, "# Completion of sixlink for fish.")
	line(&b, "complete -c sixlink -f -n __fish_use_subcommand -l help -d 'show help'")
	line(&b, "complete -c sixlink -f -n __fish_use_subcommand -l version -d 'show the version'")
	for _, c := range commands {
		line(&b, "complete -c sixlink -f -n __fish_use_subcommand -a %s -d %s", c.Name, fishText(oneLine(c.Usage)))
	}
	for _, c := range commands {
		on := "complete -c sixlink -n '__fish_seen_subcommand_from " + c.Name + "'"
		switch files, words := takes(c); {
		case files:
			line(&b, "%s -F", on)
		default:
			line(&b, "%s -f -a %s", on, fishText(strings.Join(words, " ")))
		}
		for _, o := range options(c) {
			value := ""
			if o.value != "" {
				value = " -x"
				if o.file() {
					value = " -r -F"
				}
			}
			var words []string
			for _, w := range o.words {
				words = append(words, strings.ReplaceAll(w, " ", `\ `))
			}
			if len(words) > 0 {
				value += " -a " + fishText(strings.Join(words, " "))
			}
			line(&b, "%s -l %s%s -d %s", on, o.name, value, fishText(oneLine(o.usage)))
		}
	}
	return b.String()
}

// fishText puts a text into single quotes of fish.
func fishText(s string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) + "'"
}
