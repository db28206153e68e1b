package reports_test

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"sixlink/reports"
)

// A browser is a tab that shows pages from disk and notes what it is told of them.
type browser struct {
	context.Context

	dir  string
	once sync.Mutex
	said []string // messages, faults, dialogs
	sent []string // addresses asked for
}

// missing ends a test that needs a tool from outside: skipped in one line, and where
// SIXLINK_NEED_TOOLS is set, failed.
func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
		t.Fatalf("%s is not on this machine, and SIXLINK_NEED_TOOLS is set", what)
	}
	t.Skipf("%s is not on this machine", what)
}

// newBrowser starts Chromium without a window and with nothing but the page to do.
func newBrowser(t *testing.T) *browser {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		missing(t, "chromium")
	}
	b := &browser{dir: t.TempDir()}
	options := append(
		chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true), chromedp.UserDataDir(filepath.Join(b.dir, "profile")),
	)
	allocator, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	tab, end := chromedp.NewContext(allocator)
	t.Cleanup(end)
	b.Context = tab
	b.do(t, func(ctx context.Context, tab *chromedp.Target) (chromedp.Void, error) {
		if _, err := cdp.Call(ctx, tab, network.Enable, network.EnableParams{}); err != nil {
			return chromedp.Void{}, err
		}
		_, err := cdp.Call(ctx, tab, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return chromedp.Void{}, err
	})
	if err := chromedp.Listen(tab, b.note); err != nil {
		t.Fatal(err)
	}
	return b
}

// note writes down what must not happen, and every address asked for.
func (b *browser) note(event any) {
	b.once.Lock()
	defer b.once.Unlock()
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		b.said = append(b.said, "console "+string(e.Type))
	case *runtime.EventExceptionThrown:
		b.said = append(b.said, "exception "+e.ExceptionDetails.Text)
	case *log.EventEntryAdded:
		b.said = append(b.said, "log "+e.Entry.Text)
	case *page.EventJavascriptDialogOpening:
		b.said = append(b.said, "dialog "+e.Message)
	case *network.EventRequestWillBeSent:
		b.sent = append(b.sent, e.Request.URL)
	}
}

// quiet fails where a page said anything or asked for anything but itself.
func (b *browser) quiet(t *testing.T) {
	t.Helper()
	b.once.Lock()
	defer b.once.Unlock()
	for _, s := range b.said {
		t.Errorf("the page caused: %s", s)
	}
	for _, s := range b.sent {
		if !strings.HasPrefix(s, "file://"+b.dir) && !strings.HasPrefix(s, "data:") {
			t.Errorf("the page asked for %s", s)
		}
	}
	if len(b.sent) == 0 {
		t.Error("no request seen, not even that of the page itself")
	}
	b.said, b.sent = nil, nil
}

func (b *browser) do(t *testing.T, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(b, steps...); err != nil {
		t.Fatal(err)
	}
}

// open shows the page of a report from disk, in a window so wide, in light or dark.
func (b *browser) open(t *testing.T, r reports.Report, width int64, scheme string) {
	t.Helper()
	path := filepath.Join(b.dir, "page.html")
	if err := os.WriteFile(path, []byte(htmlOf(t, r)), 0o600); err != nil {
		t.Fatal(err)
	}
	b.size(t, width, scheme)
	b.do(t, chromedp.Navigate("file://"+path))
}

func (b *browser) size(t *testing.T, width int64, scheme string) {
	t.Helper()
	b.do(t, chromedp.EmulateViewport(width, 900), func(ctx context.Context, tab *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
		})
		return chromedp.Void{}, err
	})
}

// eval runs an expression in the page.
func eval[T any](t *testing.T, b *browser, expression string) T {
	t.Helper()
	v, err := chromedp.Run(b, chromedp.Evaluate[T](expression))
	if err != nil {
		t.Fatalf("%v in %s", err, expression)
	}
	return v
}
