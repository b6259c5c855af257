// What is being printed and what was: how far it is, and the way to it.
import { useEffect, useRef } from "preact/hooks";
import { tellError } from "../actions";
import { stopJob } from "../api";
import type { Job, Printing } from "../contract";
import { Sign } from "../sign";
import { jobs } from "../state";
import { ended, say } from "../words";

export function PrintJobs({ name, whats }: { name: string; whats: Printing["whats"] }) {
  const own = Object.values(jobs.value).filter((one) => one.name === name && whats.some((what) => what.key === one.what));
  return (
    <section class="jobs" aria-label={say("printed")} hidden={own.length === 0}>
      {own.length > 0 && <h2>{say("printed")}</h2>}
      <ul>
        {own.map((one) => (
          <OneJob key={one.job} job={one} what={whats.find((what) => what.key === one.what)?.words ?? one.what} />
        ))}
      </ul>
    </section>
  );
}

/** Whether nobody is at work with the keys elsewhere. */
const isIdle = (): boolean => document.activeElement === null || document.activeElement.matches("body, main, .print button");

/** Open what was made; where the browser allows no new window, the way to it has the focus. */
function useOpened(job: Job) {
  const first = useRef<HTMLAnchorElement>(null);
  const was = useRef(job.state);
  useEffect(() => {
    if (job.state === "done" && was.current !== "done") {
      const file = job.files[0];
      if (file && window.open(file.url, "_blank") === null && isIdle()) first.current?.focus();
    }
    was.current = job.state;
  }, [job.state]);
  return first;
}

function OneJob({ job, what }: { job: Job; what: string }) {
  const first = useOpened(job);
  const goes = job.state === "waiting" || job.state === "working";
  return (
    <li data-state={job.state}>
      <p role={job.state === "failed" ? "alert" : "status"}>
        <Sign name={goes ? "working" : job.state === "done" ? "done" : "caution"} />
        <span>{toldOf(job, what)}</span>
      </p>
      {goes && (
        <>
          <progress value={job.share} max={1} aria-label={what} />
          <div class="row">
            <small>{job.words}</small>
            <button type="button" onClick={() => void stopJob(job.job).catch(tellError)}>
              {say("stop")}
            </button>
          </div>
        </>
      )}
      {job.files.map((file, i) => (
        <a key={file.url} class="button" href={file.url} target="_blank" rel="noreferrer" ref={i === 0 ? first : null}>
          <Sign name="open" />
          {say("open", { file: file.name })}
        </a>
      ))}
    </li>
  );
}

function toldOf(job: Job, what: string): string {
  switch (job.state) {
    case "waiting":
      return say("print waiting", { what });
    case "working":
      return say("printing", { what });
    case "done":
      return say("print done", { what });
    case "stopped":
      return say("print stopped", { what });
    case "failed":
      return say("print failed", { what, message: ended(job.message) });
  }
}
