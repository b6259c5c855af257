// The file tab: the design's own text, in step with the piece, with its problems at their lines.
import { useEffect, useRef } from "preact/hooks";
import { edit } from "../actions";
import type { Problem } from "../contract";
import { Sign } from "../sign";
import { design, met, mine, problems } from "../state";
import { say, sentence } from "../words";
import { FileEditor } from "./editor";
import { Writing } from "./writing";

export function FilePage({ name }: { name: string }) {
  const ground = useRef<HTMLDivElement>(null);
  const editor = useRef<FileEditor | null>(null);
  const writing = useRef<Writing | null>(null);
  const file = `${name}.yaml`;
  const fixed = design.value?.read_only ?? true;
  useEffect(() => {
    if (!ground.current || !design.value) return undefined;
    const wrote = new Writing(name, design.value);
    const made = new FileEditor(ground.current, say("file of", { file }), design.value.text, fixed, (text) => wrote.written(text));
    editor.current = made;
    writing.current = wrote;
    return () => {
      void wrote.saveNow();
      wrote.close();
      made.close();
      editor.current = writing.current = null;
    };
  }, [name, fixed]);
  const now = design.value;
  useEffect(() => {
    if (now && writing.current?.takes(now)) editor.current?.show(now.text);
  }, [now]);
  const known = problems.value;
  useEffect(() => editor.current?.mark(known), [known]);
  return (
    <main id="main" class="file">
      <section class="text">
        <h1 class="hidden">{say("file of", { file })}</h1>
        <MetHere file={file} settle={(takeMine) => void writing.current?.settle(takeMine)} />
        <div class="editor" ref={ground} />
      </section>
      <aside aria-label={say("problems")}>
        <p class="how">
          <strong>{file}</strong> {!fixed && say("file how")}
        </p>
        <Problems known={known} fixed={fixed} go={(line) => editor.current?.goTo(line)} />
      </aside>
    </main>
  );
}

/** What was written here and what was changed elsewhere: both are there to choose from. */
function MetHere({ file, settle }: { file: string; settle: (takeMine: boolean) => void }) {
  if (mine.value === null) return null;
  const kept = met.value?.kept;
  return (
    <div class="caution met-here" role="alert">
      <p>
        {say("file met", { file })} {kept && say("met kept", { file: kept })}
      </p>
      <div class="row">
        <button type="button" onClick={() => settle(true)}>
          {say("take mine")}
        </button>
        <button type="button" onClick={() => settle(false)}>
          {say("leave theirs")}
        </button>
      </div>
    </div>
  );
}

interface ProblemsProps {
  known: readonly Problem[];
  fixed: boolean;
  go: (line: number) => void;
}

function Problems({ known, fixed, go }: ProblemsProps) {
  return (
    <>
      <h2>{known.length > 0 ? say("problems count", { count: known.length }) : say("problems")}</h2>
      <div role="status">{known.length === 0 && <p>{say("no problems")}</p>}</div>
      <ul class="problems">
        {known.map((one) => (
          <li key={`${one.number} ${one.message}`}>
            <p>
              <Sign name="caution" />
              <span>{sentence(one.message)}</span>
            </p>
            <div class="row">
              {one.line !== null && (
                <button type="button" onClick={() => go(one.line ?? 1)}>
                  {say("at line", { line: one.line })}
                </button>
              )}
              {!fixed &&
                one.suggestion?.ways.map(({ way, words }) => (
                  <button key={way} type="button" class="main" onClick={() => void edit([{ op: "suggestion", number: one.number, way }])}>
                    {words}
                  </button>
                ))}
            </div>
            {one.suggestion?.words && (fixed || !one.suggestion.can_apply) && <p class="advice">{sentence(one.suggestion.words)}</p>}
          </li>
        ))}
      </ul>
    </>
  );
}
