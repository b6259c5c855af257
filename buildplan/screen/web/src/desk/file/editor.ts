// The file as text, to be written in: CodeMirror with YAML, its problems at their lines.
//
// It stands in a shadow root, whose style sheets are adopted: the page's Content-Security-Policy
// allows no style that a script writes into the page.
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { HighlightStyle, syntaxHighlighting } from "@codemirror/language";
import { yaml } from "@codemirror/lang-yaml";
import { lintGutter, setDiagnostics, type Diagnostic } from "@codemirror/lint";
import { EditorState, Transaction, type ChangeSpec } from "@codemirror/state";
import { drawSelection, EditorView, highlightActiveLine, keymap, lineNumbers } from "@codemirror/view";
import { tags } from "@lezer/highlight";
import type { Problem } from "../contract";

const COLOURS = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: "var(--accent)", fontWeight: "600" },
  { tag: [tags.comment, tags.lineComment], color: "var(--soft)", fontStyle: "italic" },
  { tag: [tags.string, tags.special(tags.string)], color: "var(--warn)" },
  { tag: [tags.separator, tags.punctuation, tags.squareBracket, tags.brace], color: "var(--soft)" },
]);

const LOOK = EditorView.theme({
  "&": { color: "var(--ink)", backgroundColor: "var(--sheet)", height: "100%", fontSize: "0.95rem" },
  "&.cm-focused": { outline: "3px solid var(--accent)", outlineOffset: "-3px" },
  ".cm-scroller": { fontFamily: 'ui-monospace, "DejaVu Sans Mono", Consolas, monospace', lineHeight: "1.55" },
  ".cm-content": { caretColor: "var(--ink)", padding: "0.75rem 0" },
  ".cm-gutters": { backgroundColor: "var(--paper)", color: "var(--soft)", border: "0", borderInlineEnd: "1px solid var(--line)" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "transparent" },
  "&.cm-focused .cm-activeLine": { boxShadow: "inset 0 0 0 100vh color-mix(in srgb, var(--tint) 55%, transparent)" },
  "&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "color-mix(in srgb, var(--accent) 30%, transparent)" },
  ".cm-cursor": { borderInlineStartColor: "var(--ink)", borderInlineStartWidth: "2px" },
  ".cm-tooltip": { backgroundColor: "var(--sheet)", color: "var(--ink)", border: "1px solid var(--edge)", borderRadius: "0.5rem", maxWidth: "min(36rem, 90vw)" },
  ".cm-diagnostic": { fontFamily: "system-ui, sans-serif", padding: "0.5rem 0.75rem", borderInlineStart: "5px solid var(--warn)" },
  ".cm-lintRange-error": { backgroundImage: "none", textDecoration: "underline wavy var(--warn)", textUnderlineOffset: "0.2em" },
});

/** The smallest change that makes one text of another: what is alike before and behind stays. */
export function changeBetween(was: string, now: string): { from: number; to: number; insert: string } | null {
  if (was === now) return null;
  let from = 0;
  const short = Math.min(was.length, now.length);
  while (from < short && was[from] === now[from]) from += 1;
  let behind = 0;
  while (behind < short - from && was[was.length - 1 - behind] === now[now.length - 1 - behind]) behind += 1;
  return { from, to: was.length - behind, insert: now.slice(from, now.length - behind) };
}

export class FileEditor {
  private readonly view: EditorView;

  constructor(ground: HTMLElement, label: string, text: string, fixed: boolean, written: (text: string) => void) {
    const root = ground.shadowRoot ?? ground.attachShadow({ mode: "open" });
    root.replaceChildren();
    this.view = new EditorView({
      root,
      parent: root,
      state: EditorState.create({
        doc: text,
        extensions: [
          lineNumbers(),
          history(),
          drawSelection(),
          highlightActiveLine(),
          lintGutter(),
          yaml(),
          syntaxHighlighting(COLOURS),
          LOOK,
          EditorView.lineWrapping,
          EditorView.contentAttributes.of({ "aria-label": label, spellcheck: "false", tabindex: "0" }),
          EditorState.readOnly.of(fixed),
          keymap.of([...defaultKeymap, ...historyKeymap]), // Tab goes on: nobody is held here
          EditorView.updateListener.of((update) => {
            const own = update.transactions.some((one) => one.docChanged && one.annotation(Transaction.remote) !== true);
            if (own) written(update.state.doc.toString());
          }),
        ],
      }),
    });
  }

  get text(): string {
    return this.view.state.doc.toString();
  }

  /** Take over a text that was made elsewhere; the cursor stays where it is. */
  show(text: string): void {
    const changes: ChangeSpec | null = changeBetween(this.text, text);
    if (changes) this.view.dispatch({ changes, annotations: [Transaction.remote.of(true), Transaction.addToHistory.of(false)] });
  }

  mark(problems: readonly Problem[]): void {
    const { doc } = this.view.state;
    const found = problems.flatMap((one): Diagnostic[] => {
      if (one.line === null || one.line < 1 || one.line > doc.lines) return [];
      const line = doc.line(one.line);
      const from = line.from + (line.text.length - line.text.trimStart().length);
      return [{ from, to: line.to, severity: "error", message: one.message }];
    });
    this.view.dispatch(setDiagnostics(this.view.state, found));
  }

  goTo(lineNumber: number): void {
    const line = this.view.state.doc.line(Math.min(lineNumber, this.view.state.doc.lines));
    this.view.dispatch({ selection: { anchor: line.from }, effects: EditorView.scrollIntoView(line.from, { y: "center" }) });
    this.view.focus();
  }

  close(): void {
    this.view.destroy();
  }
}
