// A design that takes a while to make: how far it is, and how to stop it.
import { useEffect } from "preact/hooks";
import { tellError } from "../actions";
import { getJob, stopJob } from "../api";
import { hashOf } from "../route";
import { jobs } from "../state";
import { say } from "../words";

export function Making({ job, stopped }: { job: string; stopped: () => void }) {
  useEffect(() => {
    void getJob(job).then((found) => (jobs.value = { ...jobs.value, [job]: found }), tellError);
  }, [job]);
  const found = jobs.value[job];
  useEffect(() => {
    if (found?.state === "done" && found.name) location.hash = hashOf({ screen: "design", name: found.name, tab: "piece" });
  }, [found?.state]);
  const over = found?.state === "failed" || found?.state === "stopped";
  const stop = (): void => {
    if (!over) void stopJob(job).catch(tellError);
    stopped();
  };
  return (
    <main id="main" class="alone">
      <h1>{say("making")}</h1>
      {over ? (
        <p class="caution" role="alert">
          {found.message || found.words}
        </p>
      ) : (
        <>
          <progress value={found?.share ?? 0} max={1} aria-label={say("making")} />
          <p role="status">{found?.words || say("being worked out")}</p>
        </>
      )}
      <button type="button" onClick={stop}>
        {say(over ? "back to choosing" : "stop")}
      </button>
    </main>
  );
}
