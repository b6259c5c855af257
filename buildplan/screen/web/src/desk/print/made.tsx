// What was printed of the design before, as its covers; where nothing was, the piece itself.
import { useEffect, useState } from "preact/hooks";
import { tellError } from "../actions";
import { getPrinted } from "../api";
import type { Printed } from "../contract";
import { Sign } from "../sign";
import { isolated } from "../../isolates";
import { design, jobs } from "../state";
import { say, words } from "../words";

export function Made({ name }: { name: string }) {
  const [found, setFound] = useState<Printed | null>(null);
  useEffect(() => {
    setFound(null);
    void getPrinted(name).then(setFound, tellError);
  }, [name]);
  const now = new Set(Object.values(jobs.value).flatMap((job) => job.files.map(({ url }) => url)));
  const before = found?.files.filter(({ url }) => !now.has(url)) ?? [];
  if (found && before.length > 0) return <Covers files={before} />;
  return found?.picture && now.size === 0 ? (
    <figure class="unprinted">
      <img src={found.picture} alt={isolated(design.value?.title ?? name)} />
      <figcaption>{say("nothing printed")}</figcaption>
    </figure>
  ) : null;
}

function Covers({ files }: { files: Printed["files"] }) {
  return (
    <section aria-label={say("printed before")}>
      <h2>{say("printed before")}</h2>
      <ul class="covers">
        {files.map((file) => (
          <li key={file.url}>
            <a href={file.url} target="_blank" rel="noreferrer">
              <span class="cover">{file.cover ? <img src={file.cover} alt="" loading="lazy" /> : <Sign name="open" />}</span>
              <bdi>{file.name}</bdi>
              <small>{moment(file.made)}</small>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

const moment = (seconds: number): string => new Intl.DateTimeFormat(words.value.language, { dateStyle: "medium", timeStyle: "short" }).format(new Date(seconds * 1000));
