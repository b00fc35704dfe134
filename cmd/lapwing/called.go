package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"

	"lapwing/pipeline/text"
)

// called writes what the program says, with its commands as they have to be typed here:
// a program that lies in the folder and not where commands are looked for is called
// ./lapwing, and a printed command would not be found without that.
type called struct {
	to   io.Writer
	name string
}

// calledAs is a writer for a program that was started by the name arg0.
func calledAs(to io.Writer, arg0 string) io.Writer {
	if name := typedName(arg0, runtime.GOOS == "windows", here()); name != "lapwing" {
		return called{to, name}
	}
	return to
}

// here is the folder that commands are typed in.
func here() string {
	dir, err := os.Getwd()
	if err != nil {
		return ""
	}
	return dir
}

// typedName is the name by which the program is called at the prompt. Some prompts of
// Windows find a program in the folder by its name, others hand its whole path on; all
// understand .\ before it.
func typedName(arg0 string, windows bool, dir string) string {
	switch {
	case windows:
		arg0 = strings.ReplaceAll(arg0, `\`, "/")
		at, name := arg0[:max(0, strings.LastIndexByte(arg0, '/'))], arg0[strings.LastIndexByte(arg0, '/')+1:]
		if dir != "" && strings.EqualFold(at, strings.ReplaceAll(dir, `\`, "/")) {
			return `.\` + strings.TrimSuffix(name, ".exe")
		}
		return "lapwing"
	case !strings.Contains(arg0, "/"):
		return "lapwing"
	case strings.ContainsFunc(arg0, func(r rune) bool {
		return !(r == '/' || r == '.' || r == '-' || r == '_' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z')
	}):
		return text.Typed(arg0)
	}
	return filepath.ToSlash(arg0)
}

// commandWords are the program's name before one of its commands.
var commandWords = regexp.MustCompile(`(^|[^\w./\\-])lapwing (check|clubs|completion|correct|courses|demo|export|forget|load|match|rebuild|refresh|run|season|sheets|standing|weekly|--help)\b`)

func (c called) Write(p []byte) (int, error) {
	if _, err := io.WriteString(c.to, c.words(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}

func (c called) words(s string) string {
	return commandWords.ReplaceAllString(s, "${1}"+strings.ReplaceAll(c.name, "$", "$$")+" $2")
}

// said is a message with its commands as they are typed here.
func (a *app) said(message string) string {
	if c, ok := a.out.(called); ok {
		return c.words(message)
	}
	return message
}
